/** Whether the page is used by finger. */
export const isTouch = globalThis.matchMedia?.('(pointer: coarse)').matches === true
