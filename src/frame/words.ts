/** The sentences of a report on a measured picture. */

export const meaningless = (name: string | number): string =>
  `the area “${name}” gives no usable figure; check that it is in the right place`
