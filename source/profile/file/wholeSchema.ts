import {profileSchema} from '../schema/profile.ts';

/**
The schema with all its words. The build makes this the only place that loads the schema library when a file is read, at
the first call: a sound file never gets here.
*/
export const wholeSchema = (): typeof profileSchema => profileSchema;
