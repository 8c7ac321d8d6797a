import type {Migration} from './migrate.ts';

/** Steps from older formats, oldest first. Format 1 is the first one, so nothing older exists. */
export const migrations: readonly Migration[] = [];
