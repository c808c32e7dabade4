declare const LAPWRIGHT_VERSION: string | undefined;

/** Version of the program; set when it is built, `0.0.0` when run from source. */
export const VERSION: string = typeof LAPWRIGHT_VERSION === 'string' ? LAPWRIGHT_VERSION : '0.0.0';
