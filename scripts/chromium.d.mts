export declare const CHROMIUM: string
export declare const CHROMIUM_ARGS: string[]
