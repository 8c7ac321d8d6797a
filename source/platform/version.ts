declare const ROOMTARE_VERSION: string | undefined;

/** The version of the program; written in by the build, so that no file is read for it. */
export const version = typeof ROOMTARE_VERSION === 'string' ? ROOMTARE_VERSION : '0.0.0-source';
