/** The sorts of equipment a studio's kit holds. */
export const KIT_SORTS = [
  'camera',
  'phone',
  'lens',
  'tube',
  'close-up lens',
  'lamp',
  'meter',
  'filter',
  'stand',
] as const
export type KitSort = (typeof KIT_SORTS)[number]
