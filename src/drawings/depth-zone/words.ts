/** The texts in and below a drawing of the depth of field. */
export const ZONE_WORDS = {
  depth: 'The depth of field',
  unevenness: 'The height of the sheet above flat',
  depthUnknown: 'the depth of field is unknown.',
  sheet: 'sheet',
  head: (scale: string) => `Depth of field ${scale}`,
  headSplit: (scale: string) => `Depth of field, heights ${scale}, width not to scale`,
  offFlat: (distance: string) => [`${distance} off flat`, distance],
  introduction: (depth: string, scale: string) => `The depth of field is ${depth}, drawn at ${scale}.`,
  within: (distance: string, share: string) => `The sheet is ${distance} off flat, ${share} % of the depth.`,
  beyond: (distance: string, share: string) =>
    `The sheet is ${distance} off flat, ${share} % of the depth, so parts of it are out of focus.`,
}
