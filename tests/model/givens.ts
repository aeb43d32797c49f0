import fc from 'fast-check'
import type { Texts } from './trace.ts'

const INCH = 0.0254

export const clamp = (value: number, least: number, most: number): number => Math.min(most, Math.max(least, value))
export const rounded = (value: number): string => String(Number(value.toPrecision(3)))
export const millimetres = (least: number, greatest: number) =>
  fc.double({ min: Math.log(least), max: Math.log(greatest), noNaN: true }).map((log) => rounded(Math.exp(log)))
export const sides = (least: number, greatest: number) =>
  fc
    .tuple(millimetres(least, greatest), fc.double({ min: 0.5, max: 1.6, noNaN: true }))
    .map(([width, ratio]) => `${width} x ${rounded(Number(width) * ratio)}`)
/** From a phone's to the largest in use; the last has pixels that are not quite square, as data sheets round them. */
const SENSORS = [
  ['9.8 x 7.3', '8160 x 6120'],
  ['22.3 x 14.9', '6000 x 4000'],
  ['36 x 24', '6000 x 4000'],
  ['35.7 x 23.8', '9504 x 6336'],
  ['43.8 x 32.9', '8256 x 6192'],
  ['53.4 x 40', '14204 x 10652'],
  ['36 x 24.7', '6000 x 4000'],
] as const
const MARKS = ['2.8', '4', '5.6', '6.3', '8', '9', '11', '13', '16', '22']
export const camera = fc
  .record({
    body: fc.constantFrom(...SENSORS),
    focal: millimetres(24, 180),
    aperture: fc.constantFrom(...MARKS),
    pupil_ratio: fc.constantFrom('1', '0.8', '1.4', '0.6'),
    principal_gap: fc.constantFrom('0', '12', '-8'),
    blur_pixels: fc.constantFrom('1', '1.5', '2', '3'),
    sensor_to_carriage: fc.constantFrom('0', '60', '-45'),
    original_thickness: fc.constantFrom('0', '3', '40'),
    lens_greatest: fc.constantFrom('1:10', '1:4', '1:2', '1:1'),
    lens_smallest: fc.constantFrom('f/11', 'f/16', 'f/22'),
    principal_inset: fc.constantFrom('0', '40'),
    room_required: fc.constantFrom('100', '300', '800'),
  })
  .map(({ body: [sensor, sensor_pixels], aperture, ...rest }) => ({
    ...rest,
    sensor,
    sensor_pixels,
    aperture: `f/${aperture}`,
  }))
export const pair = fc.record({
  lamp_out: millimetres(300, 3000),
  lamp_height: millimetres(300, 3000),
  lamp_aim: millimetres(1, 500),
  beam_angle: fc.constantFrom('60', '90', '120', '140'),
  lamp_radius: fc.constantFrom('50', '150'),
  glossy: fc.constantFrom('yes', 'no'),
  curl: fc.constantFrom('0', '4', '-4', '-20'),
})
export const together = (...parts: readonly fc.Arbitrary<object>[]): fc.Arbitrary<Texts> =>
  fc.tuple(...parts).map((all) => Object.assign({}, ...all) as Texts)

export const SAMPLING = ['wanted_sampling', 'ppi', '', INCH] as const
export const DEPTH = ['unevenness', 'depth', 'mm', 1000] as const
export const CONTRAST = ['contrast_limit', 'contrast', '%', 100, [1, 90]] as const
export const EVEN = ['even_limit', 'spread', 'stop', 1, [0.001, 2]] as const
export const COLUMN = ['column_reach', 'carriage', 'mm', 1000] as const
export const LAMP = ['lamp_radius', 'lamp_clearance', 'mm', 1000] as const
