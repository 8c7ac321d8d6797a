export {remarkOnMeter} from './meterSanity.ts';
export {remarkOnTape} from './tapeSanity.ts';
