/** Marks a readings file and its version. */
export const READINGS_FORMAT = 'platenwright-readings';
export const READINGS_VERSION = 1;
