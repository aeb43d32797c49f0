/** The sorts of equipment in a studio's kit. */
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

/** A figure of a piece of kit: how it is filled in, and the unit a bare number takes. */
export interface KitFigure {
  readonly name: string
  readonly entry?: 'size' | 'list' | 'text' | 'choice'
  readonly unit?: string
  readonly options?: readonly string[]
  readonly whole?: true
}

const sensor: readonly KitFigure[] = [
  { name: 'sensor', entry: 'size', unit: 'mm' },
  { name: 'sensor_pixels', entry: 'size', unit: 'px' },
]

/** What is known of each sort, named as in the vocabulary of the templates wherever that has a name for it. */
export const KIT_FIGURES: Readonly<Record<KitSort, readonly KitFigure[]>> = {
  camera: [...sensor, { name: 'bits', unit: '', whole: true }, { name: 'mass', unit: 'kg' }],
  phone: [
    ...sensor,
    { name: 'focal', unit: 'mm' },
    { name: 'aperture', unit: 'f/' },
    { name: 'nearest', unit: 'mm' },
    { name: 'mass', unit: 'kg' },
  ],
  lens: [
    { name: 'focal', unit: 'mm' },
    { name: 'widest', unit: 'f/' },
    { name: 'smallest', unit: 'f/' },
    { name: 'lens_greatest', unit: '1:' },
    { name: 'nearest', unit: 'mm' },
    { name: 'pupil_ratio', unit: '' },
    { name: 'principal_inset', unit: 'mm' },
    { name: 'thread', unit: 'mm' },
    { name: 'mass', unit: 'kg' },
  ],
  tube: [{ name: 'length', unit: 'mm' }],
  'close-up lens': [
    { name: 'power', unit: 'dpt' },
    { name: 'thread', unit: 'mm' },
  ],
  lamp: [
    { name: 'intensity', unit: 'cd' },
    { name: 'reading', unit: 'lx' },
    { name: 'reading_distance', unit: 'm' },
    { name: 'guide_number', unit: 'm' },
    { name: 'beam_angle', unit: '°' },
    { name: 'power_steps', entry: 'list', unit: 'stop' },
    { name: 'power', unit: 'W' },
    { name: 'energy', unit: 'J' },
    { name: 'colour_temperature', unit: 'K' },
    { name: 'rendering', unit: '' },
    { name: 'radius', unit: 'mm' },
  ],
  meter: [
    { name: 'receptor', entry: 'choice', options: ['flat', 'dome', 'reflected'] },
    { name: 'constant', unit: '' },
    { name: 'step', unit: 'stop' },
  ],
  filter: [
    { name: 'shift', unit: 'stop' },
    { name: 'thread', unit: 'mm' },
  ],
  stand: [
    { name: 'column_least', unit: 'mm' },
    { name: 'column_most', unit: 'mm' },
    { name: 'load', unit: 'kg' },
    { name: 'arm', unit: 'mm' },
    { name: 'board', entry: 'size', unit: 'mm' },
  ],
}
