// What the fuzzer drives, bundled once: the commands, the reading of profiles, and the app on files in memory.
export {render} from 'ink';
export {createElement} from 'react';
export {registry} from '../../source/commands/registry.ts';
export {Trouble} from '../../source/platform/trouble.ts';
export {profileJsonSchema} from '../../source/profile/file/jsonSchema.ts';
export {checkProfile, parseProfile} from '../../source/profile/file/parse.ts';
export {serialiseProfile} from '../../source/profile/file/serialise.ts';
export {cellWidth} from '../../source/report/fitCells.ts';
export {App} from '../../source/ui/app.tsx';
export {pressesOf} from '../../source/ui/keys/press.ts';
export {startSession} from '../../source/ui/session.ts';
export {memoryFiles} from '../ui/memoryFiles.ts';
