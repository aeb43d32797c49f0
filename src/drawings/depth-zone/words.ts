/** The texts in and below a drawing of the depth in focus. */
export const ZONE_WORDS = {
  depth: 'The depth in focus',
  unevenness: 'The height of the sheet above flat',
  depthUnknown: 'the depth in focus is unknown.',
  sheet: 'sheet',
  head: (scale: string) => `Depth in focus ${scale}`,
  headSplit: (scale: string) => `Depth in focus, heights ${scale}, width not to scale`,
  offFlat: (distance: string) => [`${distance} off flat`, distance],
  introduction: (depth: string, scale: string) => `The depth in focus is ${depth}, drawn at ${scale}.`,
  within: (distance: string, share: string) => `The sheet is ${distance} off flat, ${share} % of the depth.`,
  beyond: (distance: string, share: string) =>
    `The sheet is ${distance} off flat, ${share} % of the depth, so parts of it are out of focus.`,
}
