import { listText, plural } from '../../units/plural.ts'
import type { AreaKind } from './area-shapes.ts'

export const frameWords = {
  choose: 'Choose a picture',
  takePhoto: 'Take a photo',
  dropHint: 'Or drop one here: JPEG, PNG or TIFF. It stays on this device; only the areas and readings are saved.',
  again: (name: string): string => `Drop ${name} again to see it, or another picture to measure that.`,
  reading: 'Reading the picture…',
  readingOf: (at: number, of: number): string => `Reading picture ${at} of ${of}…`,
  severalMeasured: (count: number): string => `${count} pictures measured; the latest is open.`,
  measuring: 'Measuring…',
  keepPreview: 'Save a small copy of the picture in this sheet',
  sendPreview: 'Send the small copy along in links, files and backups',
  follow: 'Compare pictures over time',
  followHint: 'Each picture dropped here is added at its own time. Drop several at once, or the same card again later.',
  overTime: 'Pictures over time',
  picturesName: 'Picture',
  takenAt: 'Taken',
  change: (area: string): string => `${area}, change of light in stops`,
  colourChange: (area: string): string => `${area}, change of colour, ΔE2000`,
  spreadChange: (area: string): string => `${area}, change of spread in stops`,
  responseOfFirst: (area: string): string => `${area}, response one half of the first`,
  noTime: 'no time',
  cancel: 'Cancel',
  cancelled: 'Cancelled.',
  none: 'Nothing measured yet',
  measured: (count: number): string => `${plural(count, 'area')} measured`,
  facts: (name: string, width: number, height: number, bits: number, encoding: string): string =>
    `${name}: ${width} × ${height} px, ${bits} bits, ${encoding}`,
  another: (before: string): string => `This is a different picture from ${before}, which was measured before.`,
  samePicture: 'This is the picture measured before.',
  unread: (name: string, why: string): string => `${name}: ${why}.`,
  add: 'Mark an area',
  copyAreas: (frame: string): string => `Copy the areas of ${frame}`,
  areas: 'Areas',
  remove: (name: string): string => `Remove ${name}`,
  areaName: 'Name',
  length: 'True length',
  size: 'True size',
  findCorners: 'Find its corners',
  findChart: (known: boolean): string => (known ? 'Find the chart again' : 'Find the chart’s outline'),
  cornersFound: (found: readonly string[], unfound: readonly string[]): string =>
    [
      ...(found.length > 0 ? [`The corners of ${listText(found)} were found: check them on the picture.`] : []),
      ...(unfound.length > 0
        ? [
            `The corners of ${listText(unfound)} cannot be found reliably: drag them into place. A card can be found where it lies alone, wholly in the picture, and clearly brighter or darker than its background.`,
          ]
        : []),
    ].join(' '),
  columns: 'Columns',
  rows: 'Rows',
  patches: 'Patches: paste a table of name, L*, a*, b*',
  useValue: (text: string): string => `Use ${text}`,
  zoomIn: 'Larger',
  zoomOut: 'Smaller',
  fit: 'Fit',
  pixelForPixel: '1:1',
  picture: (name: string): string => `The picture ${name} with its areas`,
  keys: 'Arrow keys move the chosen area or corner by a pixel, with Shift by ten. + and − zoom, 0 fits, 1 shows pixel for pixel.',
  areaLabel: (kind: AreaKind, name: string): string => `${KIND_NAMES[kind]} ${name}`,
  cornerLabel: (name: string, at: number): string => `${name}, point ${at}`,
  takenHeading: 'Recorded by the camera',
  notMeasured: (why: string): string => `Not measured: ${why}.`,
  gain: 'Flat-field correction',
  gainUpTo: (gain: string, noise: string): string =>
    `gains from 1 to ${gain}; noise at the dimmest field ${noise} times`,
  caution:
    'A picture that was sharpened, scaled or noise-reduced measures the software as well as the camera. Stray light and clipped fields mislead.',
  hint: 'What to photograph, and how',
  aperture: 'Given that takes the aperture',
  time: 'Given that takes the exposure time',
  iso: 'Given that takes the ISO speed',
  focal: 'Given that takes the focal length',
  when: 'Given that takes the date',
  noGiven: 'No given has this name.',
  map: (name: string): string => `The light of ${name}`,
} as const

export const KIND_NAMES: Readonly<Record<AreaKind, string>> = {
  patch: 'Patch',
  evenness: 'Evenness',
  rule: 'Rule',
  square: 'Outline',
  edge: 'Edge',
  chart: 'Chart',
  line: 'Line',
}

/** How each kind is measured, and by what source. */
export const METHODS: Readonly<Record<AreaKind, string>> = {
  patch:
    'Means over the box; L*a*b* of the mean light for D50, ISO/CIE 11664-4. Noise is the standard deviation of L*.',
  evenness: 'Mean luminance of each field of a grid, in stops against the brightest. A clipped field is refused.',
  rule: 'The distance of two marks over its true length.',
  square: 'The four corners of a rectangle of known size. Keystone is how far opposite sides differ in length.',
  edge: 'Spatial frequency response of a slanted edge, after ISO 12233:2017, on linear light; the edge tilted by 2° to 10°.',
  chart: 'CIEDE2000 of each patch against its reference, ISO/CIE 11664-6.',
  line: 'A cubic along the line that is found between two marks; its bow from the straight between its ends. Common practice, no source.',
}

/** What each figure of a reading is called. */
export const FIGURE_NAMES: Readonly<Record<string, string>> = {
  code: 'Mean code',
  light: 'Linear light',
  lab: 'L*, a*, b*',
  noise: 'Noise, L*',
  spread: 'Spread',
  uniformity: 'Least over mean',
  corner: 'Corners against the centre',
  sampling: 'Sampling',
  angle: 'Angle',
  keystone_across: 'Keystone across',
  keystone_down: 'Keystone down',
  rotation: 'Rotation',
  sampling_across: 'Sampling across',
  sampling_down: 'Sampling down',
  skew: 'Off square',
  mtf50: 'Response one half at',
  mtf10: 'Response one tenth at',
  efficiency: 'Sampling efficiency',
  greatest: 'Greatest response',
  mean: 'Mean ΔE2000',
  percentile_90: '90th percentile',
  worst: 'Worst',
  bow: 'Bow',
  bow_percent: 'Bow, of the height',
}
