export {oneCellText as plain} from '../../source/report/oneCellText.ts';

/** Colours and other styles of text. */
export const styles = /\u001B\[[\d;]*m/g;

/** The text without its styles. */
export const bareText = text => (text.includes('\u001B') ? text.replace(styles, '') : text);
