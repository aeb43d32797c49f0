import fc from 'fast-check'
import { expect } from 'vitest'
import { camera, EVEN, LAMP, millimetres, pair, rounded, SAMPLING, sides, together } from './givens.ts'
import type { Job } from './jobs.ts'
import { type Camera, Photograph } from './photograph.ts'
import {
  columnTraced,
  framed,
  glareTraced,
  lightTraced,
  lowTraced,
  maskTraced,
  pictureTraced,
  placed,
  roomTraced,
  size,
} from './trace.ts'

const INCH = 0.0254

/** A phone’s lens as it is, which the sheet has to find from a ruler photographed at two heights. */
interface Phone {
  readonly focal: number
  readonly sensor: readonly [number, number]
  readonly pixels: readonly [number, number]
}
const PHONES = [
  { focal: 0.0057, sensor: [0.0098, 0.00735], pixels: [4032, 3024] },
  { focal: 0.0042, sensor: [0.0056, 0.0042], pixels: [4000, 3000] },
  { focal: 0.0086, sensor: [0.0128, 0.0096], pixels: [8192, 6144] },
] as const satisfies readonly Phone[]
const inMillimetres = (metres: number): string => String(Number((1000 * metres).toPrecision(12)))

/** The pixels along a rule under a thin lens: its image is as many times smaller as the lens is farther from it than from the sensor. */
const rulePixels = ({ focal, sensor, pixels }: Phone, rule: number, lensHeight: number): number =>
  ((rule * focal) / (lensHeight - focal) / sensor[0]) * pixels[0]

const phoneAt = (phone: Phone, lensHeight: number, aperture: number): Photograph => {
  const own: Camera = { ...phone, pupilRatio: 1, gap: 0, aperture }
  const image = (phone.focal * lensHeight) / (lensHeight - phone.focal)
  return Photograph.at(own, lensHeight + image, false)
}

const phoneJob: Job = {
  name: 'phone-stand',
  judges: ['sharp_enough', 'aperture_on_lens', 'depth_holds', 'aperture_resolves', 'not_too_near', 'stand_reaches'],
  texts: together(
    fc.record({
      original: sides(60, 500),
      border: fc.constantFrom('0', '10'),
      unevenness: millimetres(1, 60),
      lens_smallest: fc.constantFrom('f/1.4', 'f/16'),
    }),
    fc
      .record({
        phone: fc.constantFrom(...PHONES),
        lens_now: fc.double({ min: 0.15, max: 0.5, noNaN: true }),
        moved: fc.constantFrom(0.05, 0.1, 0.2),
        share: fc.double({ min: 0.4, max: 0.95, noNaN: true }),
      })
      .map(({ phone, lens_now: lens, moved, share }) => {
        const field = (phone.sensor[0] * (lens - phone.focal)) / phone.focal
        return {
          sensor: `${inMillimetres(phone.sensor[0])} x ${inMillimetres(phone.sensor[1])}`,
          sensor_pixels: phone.pixels.join(' x '),
          rule_frame: phone.pixels.join(' x '),
          rule_length: inMillimetres(share * field),
          rule_pixels: String(rulePixels(phone, share * field, lens)),
          moved_up: inMillimetres(moved),
          rule_pixels_up: String(rulePixels(phone, share * field, lens + moved)),
        }
      }),
  ),
  aims: [
    SAMPLING,
    ['unevenness', 'depth', 'mm', 1000],
    ['nearest_focus', 'lens_height', 'mm', 1000],
    ['stand_reach', 'lens_height', 'mm', 1000],
    ['contrast_limit', 'contrast', '%', 100, [1, 90]],
  ],
  trace: (sheet) => {
    const width = size(sheet, 'sensor')[0]
    const phone = PHONES.find(({ sensor }) => Math.abs(sensor[0] - width) < 1e-9) as Phone
    // The sheet was never given the focal length.
    expect(sheet.number('focal') / phone.focal).toBeCloseTo(1, 4)
    const height = sheet.number('lens_height')
    const photograph = phoneAt(phone, height, sheet.number('aperture'))
    expect(framed(sheet, photograph)).toBeLessThan(1.001)
    return {
      ...pictureTraced(sheet, photograph),
      not_too_near: sheet.number('nearest_focus') / height,
      stand_reaches: height / sheet.number('stand_reach'),
    }
  },
}

const objectJob: Job = {
  name: 'small-object',
  judges: [
    'lens_focuses',
    'aperture_on_lens',
    'room_enough',
    'depth_holds',
    'aperture_resolves',
    'column_reaches',
    'scale_true',
    'perspective_small',
    'shadow_inside',
    'sharp_enough',
  ],
  texts: together(
    camera,
    fc.record({
      original: sides(10, 200),
      border: millimetres(2, 60),
      print_scale: fc.constantFrom('1:2', '1:1', '2:1', '5:1'),
      object_top: millimetres(2, 60),
      outline: fc.double({ min: 0, max: 0.95, noNaN: true }),
      scale: fc.double({ min: 0, max: 1, noNaN: true }),
      key_elevation: fc.constantFrom('20', '45', '60'),
      print_blur: millimetres(0.02, 2),
    }),
  ).map(({ outline, scale, ...all }) => ({
    ...all,
    outline_height: rounded(Number(outline) * Number(all.object_top)),
    scale_height: rounded(Number(scale) * Number(all.object_top)),
  })),
  aims: [
    ['print_sampling', 'at_print', '', INCH],
    ['contrast_limit', 'contrast', '%', 100, [1, 90]],
    ['scale_limit', 'scale_error', '%', 100, [0.01, 50]],
    ['perspective_limit', 'top_larger', '%', 100, [0.1, 90]],
    ['column_reach', 'carriage', 'mm', 1000],
    ['border', 'object_shadow', 'mm', 1000],
  ],
  trace: (sheet) => {
    const [outline, top, scale] = ['outline_height', 'object_top', 'scale_height'].map((name) =>
      sheet.number(name),
    ) as [number, number, number]
    // In focus half-way between the outline and the top.
    const face = outline + Math.max(top - outline, 1e-4) / 2
    const photograph = placed(sheet, face)
    expect(framed(sheet, photograph)).toBeLessThan(1.001)
    /** How large a metre is drawn at a height over the table. */
    const drawn = (height: number) => photograph.image(1, height - face)
    const enlarged = sheet.number('print_scale') / photograph.magnification
    return {
      ...pictureTraced(sheet, photograph),
      ...columnTraced(sheet, photograph, face),
      depth_holds: (photograph.blurOver(Math.max(top - outline, 1e-4)) * enlarged) / sheet.number('print_blur'),
      scale_true: Math.abs(drawn(outline) / drawn(scale) - 1) / sheet.number('scale_limit'),
      perspective_small: (drawn(top) / drawn(outline) - 1) / sheet.number('perspective_limit'),
      // A ray past the top's edge meets the table this far out.
      shadow_inside: top / Math.tan(sheet.number('key_elevation')) / sheet.number('border'),
    }
  },
}

const glossJob: Job = {
  name: 'glossy',
  judges: ['even_enough', 'lamps_low', 'lamps_clear', 'mask_fits', 'mask_out_of_light', 'ceiling_clear', 'wall_clear'],
  texts: together(
    pair,
    fc.record({
      original: sides(100, 1500),
      lens_height: millimetres(600, 3000),
      masked: fc.constantFrom('yes', 'yes', 'no'),
      opposite: fc.constantFrom('something pale', 'dark cloth'),
      opposite_distance: millimetres(1500, 3000),
      wall: fc.constantFrom('coloured', 'black or grey'),
      wall_distance: millimetres(300, 3000),
      mask: sides(200, 3000),
      mask_height: millimetres(300, 2500),
      original_thickness: fc.constantFrom('0', '20'),
    }),
  ).map((all) => ({
    ...all,
    glossy: 'yes',
    // The mask hangs below the lens.
    mask_height: rounded(Math.min(Number(all.mask_height), 0.98 * Number(all.lens_height))),
  })),
  aims: [EVEN, LAMP],
  trace: (sheet) => {
    const field = size(sheet, 'original')
    return {
      ...lightTraced(sheet, field),
      ...lowTraced(sheet),
      ...glareTraced(sheet, field[0] / 2),
      ...maskTraced(sheet, field),
      ...roomTraced(sheet, field),
    }
  },
}

export const NEAR_JOBS: readonly Job[] = [phoneJob, objectJob, glossJob]
