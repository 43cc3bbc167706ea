/** The version of the pages, written in when they are built. */
declare const __APP_VERSION__: string;
