import fc from 'fast-check'
import { expect } from 'vitest'
import type { Filled } from '../templates/open.ts'
import {
  COLUMN,
  CONTRAST,
  camera,
  DEPTH,
  EVEN,
  LAMP,
  millimetres,
  pair,
  rounded,
  SAMPLING,
  sides,
  together,
} from './givens.ts'
import { type Lamp, Photograph, seenByReflection, spread } from './photograph.ts'
import {
  arc,
  armsGlareTraced,
  cameraOf,
  coarser,
  columnTraced,
  faceOf,
  framed,
  glareTraced,
  lampsOf,
  lightTraced,
  lowTraced,
  pictureTraced,
  placed,
  sheetTraced,
  size,
  type Texts,
  type Traced,
} from './trace.ts'

export interface Job {
  /** Of the shelf; where it has parts of its own, what it is called. */
  readonly name: string
  readonly parts?: readonly string[]
  /** The checks that are judged, each of which some sheets fail. */
  readonly judges: readonly string[]
  readonly texts: fc.Arbitrary<Texts>
  /** Givens set to about what a result gives: limit, result, unit, the result's size in that unit. */
  readonly aims: readonly (readonly [
    given: string,
    result: string,
    unit: string,
    scale: number,
    range?: readonly [number, number],
  ])[]
  readonly trace: (sheet: Filled) => Traced
}

/** How much steeper the pages rise beside the gutter than the light of the lamps at the sides falls, by the slopes themselves. */
function gutterTraced(sheet: Filled, slope: number, tilt: number): number {
  // A page taken by itself is level: the one that faces it rises by as much as the volume is not opened.
  const facing = sheet.value('taken') === 'the whole opening' ? tilt : Math.PI - sheet.number('opened_to')
  const [{ x, z }] = lampsOf(sheet) as [Lamp]
  // Out along the page that is in the way, the light comes in above its tangent at the gutter, or not.
  const rises = (out: number): number => out * Math.tan(facing + slope)
  return facing + slope >= Math.PI / 2 ? Number.POSITIVE_INFINITY : rises(Math.abs(x)) / z
}

/**
 * Whether a pair within reach lights the field evenly, low enough and clear of glare: the place that was found, where one
 * was; where none was, the best of a coarse lattice of places, of which none may do with a tenth to spare.
 */
function placeTraced(sheet: Filled): { readonly ifPassed: number; readonly ifFailed: number } {
  const [width, height] = size(sheet, 'original')
  const reach = sheet.number('lamp_reach')
  const short = (out: number, up: number, aim: number, grid?: number): number => {
    const lamps = [-1, 1].map((side) => ({
      x: side * out,
      y: 0,
      z: up,
      aimX: -side * aim,
      aimY: 0,
      beam: sheet.number('beam_angle'),
      intensity: 1,
    }))
    const curl = Math.abs(sheet.number('curl'))
    const seen = seenByReflection(0, sheet.number('lens_height'), [-width / 2, width / 2], up, curl)
    return Math.max(
      spread(lamps, width, height, grid) / sheet.number('even_limit'),
      // The whole lamp is below half a right angle, as seen from the centre, and no farther from there than the reach.
      (up + sheet.number('lamp_radius')) / out,
      Math.hypot(out, up) / reach,
      sheet.number('lamp_radius') / up,
      sheet.value('glossy') === true ? (seen + sheet.number('lamp_radius')) / out : 0,
    )
  }
  const { x, z, aim_x } = sheet.value('advice') as Record<'x' | 'z' | 'aim_x', number>
  const twelfths = Array.from({ length: 12 }, (_, i) => ((i + 1) * reach) / 12)
  const lattice = (): number[] =>
    twelfths.flatMap((out) =>
      twelfths
        .filter((up) => up <= out)
        .flatMap((up) => [0, 0.25, 0.5].map((part) => short(out, up, part * width, 8) * 1.1)),
    )
  const isMet = sheet.state('a_place_found') !== 'fail'
  return {
    // The light is looked at in other places there; close to a small original they differ by a little.
    ifPassed: isMet ? short(Math.abs(x), z, -aim_x) / 1.03 : 1,
    ifFailed: isMet ? 1 : Math.min(...lattice()),
  }
}

export const JOBS: readonly Job[] = [
  {
    name: 'flat-sheet',
    judges: [
      'sharp_enough',
      'lens_focuses',
      'aperture_on_lens',
      'room_enough',
      'depth_holds',
      'aperture_resolves',
      'column_reaches',
      'even_enough',
      'lamps_low',
      'lamps_clear',
    ],
    texts: together(camera, pair, fc.record({ original: sides(20, 3000) })),
    aims: [SAMPLING, DEPTH, CONTRAST, EVEN, COLUMN, LAMP],
    trace: sheetTraced,
  },
  {
    name: 'best-aperture',
    judges: ['sharp_enough', 'aperture_on_lens', 'depth_holds', 'aperture_resolves'],
    texts: together(
      camera,
      fc.record({
        page_width: millimetres(60, 400),
        rise: fc.double({ min: 1, max: 1.15, noNaN: true }),
        magnification: fc.constantFrom('1:20', '1:10.5', '1:4', '1:1.5', '1:1', '2:1'),
      }),
    ).map(({ rise, ...all }) => ({ ...all, page_arc: String(Number(all.page_width) * Number(rise)) })),
    aims: [SAMPLING, CONTRAST],
    trace: (sheet) => {
      const width = sheet.number('page_width')
      const { rise } = arc(width, sheet.number('page_arc'))
      const m = sheet.number('magnification')
      const own = cameraOf(sheet)
      const photograph = Photograph.at(own, own.focal * (2 + m + 1 / m) + own.gap, m > 1)
      expect(sheet.number('wanted_depth')).toBeCloseTo(rise + sheet.number('unevenness'), 8)
      return pictureTraced(sheet, photograph)
    },
  },
  {
    name: 'bound-volume',
    judges: [
      'sharp_enough',
      'lens_focuses',
      'aperture_on_lens',
      'room_enough',
      'depth_holds',
      'aperture_resolves',
      'column_reaches',
      'gutter_lit',
      'even_enough',
      'lamps_low',
      'lamps_clear',
    ],
    texts: together(
      camera,
      pair,
      fc.record({
        width: millimetres(80, 420),
        taken: fc.constantFrom('one page at a time', 'the whole opening'),
        rise: fc.double({ min: 1, max: 1.08, noNaN: true }),
        opened_to: fc.constantFrom('90', '110', '120', '150', '180'),
        opens_safely: fc.constantFrom('110', '180'),
        page_step: fc.constantFrom('0', '6'),
        gutter_along: fc.constantFrom('yes', 'no'),
      }),
    ).map(({ width, rise, ...all }) => {
      const page = Number(width) / (all.taken === 'the whole opening' ? 2 : 1)
      return {
        ...all,
        original: `${width} x ${rounded(page * 1.4)}`,
        page_arc: String(page * Number(rise)),
        original_thickness: '90',
      }
    }),
    aims: [SAMPLING, CONTRAST, EVEN, COLUMN, LAMP],
    trace: (sheet) => {
      const [width, height] = size(sheet, 'original')
      const whole = sheet.value('taken') === 'the whole opening'
      const along = sheet.value('gutter_along') === true
      const page = whole ? width / 2 : width
      const { rise, slope } = arc(page, sheet.number('page_arc'))
      const tilt = whole ? (Math.PI - sheet.number('opened_to')) / 2 : 0
      // From the lowest point to the highest: the arc, the waves, the tilt, and one page over the other.
      const depth = rise + sheet.number('unevenness') + (whole ? page * Math.sin(tilt) + sheet.number('page_step') : 0)
      expect(sheet.number('wanted_depth')).toBeCloseTo(depth, 8)
      const face = Math.max(0, sheet.number('original_thickness') - depth / 2)
      const photograph = placed(sheet, face)
      return {
        ...pictureTraced(sheet, photograph, Math.min(slope + tilt, 1.5)),
        ...columnTraced(sheet, photograph, face),
        gutter_lit: along ? 0 : gutterTraced(sheet, slope, tilt),
        // With the gutter from lamp to lamp, they stand at head and tail.
        ...(along
          ? { ...lightTraced(sheet, [height, width]), ...glareTraced(sheet, height / 2) }
          : {
              ...lightTraced(sheet, [width, height]),
              ...glareTraced(sheet, width / 2, 0, Math.min(slope + tilt, 0.768)),
            }),
      }
    },
  },
  {
    name: 'in-tiles',
    judges: [
      'lens_focuses',
      'aperture_on_lens',
      'room_enough',
      'depth_holds',
      'aperture_resolves',
      'column_reaches',
      'even_enough',
      'lamps_low',
      'lamps_clear',
      'joins_well',
      'one_frame',
      'overlap_fits',
      'overlap_enough',
      'travel_enough',
      'table_enough',
    ],
    texts: together(
      camera,
      pair,
      fc.record({
        original: sides(100, 3000),
        overlap: fc.constantFrom('20', '60', '120', '250'),
        travel_reach: sides(200, 2500),
        free_table: sides(500, 4000),
        border: fc.constantFrom('0', '10'),
        moves: fc.constantFrom('the camera', 'the board'),
        lens_greatest: fc.constantFrom('1:40', '1:15', '1:4'),
        wanted_sampling: fc.constantFrom('150', '300', '400', '600'),
      }),
    ),
    aims: [DEPTH, CONTRAST, EVEN, COLUMN, LAMP, ['join_limit', 'mismatch', 'px', 1, [0.1, 100]]],
    trace: (sheet) => {
      const photograph = placed(sheet, faceOf(sheet))
      const [width, height] = size(sheet, 'original')
      const { sensor } = photograph.camera
      const turned = sheet.value('turned') === true
      const frame = [0, 1].map((side) => (sensor[turned ? 1 - side : side] as number) / photograph.magnification)
      const border = sheet.number('border')
      const steps = [sheet.number('step_across'), sheet.number('step_down')]
      const counts = [sheet.number('across'), sheet.number('down')]
      const firsts = [sheet.number('first_across'), sheet.number('first_down')]
      // Frames put where the sheet says cover the original with its border, from edge to edge.
      for (const [axis, side] of [width, height].entries()) {
        const [first, step, many, covers] = [firsts, steps, counts, frame].map((of) => of[axis] as number) as [
          number,
          number,
          number,
          number,
        ]
        expect(first - covers / 2).toBeLessThanOrEqual(-border + 1e-6)
        expect(first + (many - 1) * step + covers / 2).toBeGreaterThanOrEqual(side + border - 1e-6)
        if (many > 1) expect(covers - step).toBeGreaterThan(0)
      }
      const short = Math.min(...frame)
      const shared = [0, 1].flatMap((axis) =>
        (counts[axis] as number) > 1 ? [(frame[axis] as number) - (steps[axis] as number)] : [],
      )
      // From the first frame's middle to the last one's; a board that moves takes the original with it.
      const travelled = [0, 1].map((axis) => ((counts[axis] as number) - 1) * (steps[axis] as number))
      const reach = size(sheet, 'travel_reach')
      const table = size(sheet, 'free_table')
      const swept = [width, height].map((side, axis) =>
        sheet.value('moves') === 'the board' ? side + (travelled[axis] as number) : side,
      )
      const lies = [
        [0, 1],
        [1, 0],
      ].map(([across, down]) =>
        Math.max(
          (width + 2 * border) / (frame[across as number] as number),
          (height + 2 * border) / (frame[down as number] as number),
        ),
      )
      const high = sheet.number('wanted_depth')
      const apart =
        (high / (photograph.pupilDistance - high)) *
        Math.max(...steps) *
        photograph.sampling(coarser(photograph.camera), 0)
      const camera = sheet.value('moves') === 'the camera'
      const lit = camera ? [width + 2 * border, height + 2 * border] : frame
      return {
        ...pictureTraced(sheet, photograph),
        ...columnTraced(sheet, photograph, faceOf(sheet)),
        ...lightTraced(sheet, lit as [number, number]),
        ...glareTraced(
          sheet,
          (frame[0] as number) / 2,
          camera ? (((counts[0] as number) - 1) * (steps[0] as number)) / 2 : 0,
        ),
        joins_well: apart / sheet.number('join_limit'),
        one_frame: 1 / Math.min(...lies),
        // More than half of a frame shared, and a neighbour's neighbour is in it, too.
        overlap_fits: sheet.number('overlap') / (short / 2),
        overlap_enough: shared.length === 0 ? 0 : short / 8 / Math.min(...shared),
        travel_enough: Math.max(...travelled.map((way, axis) => way / (reach[axis] as number))),
        table_enough: Math.max(...swept.map((way, axis) => way / (table[axis] as number))),
      }
    },
  },
  {
    name: 'two-lamps',
    judges: ['a_place_found', 'even_enough', 'lamps_low', 'lamps_clear'],
    texts: together(
      fc.record({
        original: sides(100, 1500),
        lens_height: millimetres(400, 3000),
        left_out: millimetres(300, 2500),
        left_height: millimetres(300, 2500),
        lamp_reach: fc.constantFrom('500', '1200', '3000'),
        lamp_radius: fc.constantFrom('20', '100'),
        glossy: fc.constantFrom('yes', 'no'),
        right_out: millimetres(300, 2500),
        right_height: millimetres(300, 2500),
        lamp_aim: millimetres(1, 400),
        beam_angle: fc.constantFrom('60', '120'),
        left_intensity: fc.constantFrom('1000', '800'),
        curl: fc.constantFrom('0', '5', '-10'),
      }),
    ),
    aims: [EVEN, LAMP],
    trace: (sheet) => ({
      a_place_found: placeTraced(sheet),
      ...lightTraced(sheet, size(sheet, 'original')),
      ...glareTraced(sheet, size(sheet, 'original')[0] / 2),
    }),
  },
  {
    name: 'fixed-arms',
    judges: ['arms_cover', 'lamps_low', 'lamps_clear'],
    texts: fc.record({
      // Long and narrow ones too, which lamps far apart on an arm are clear of.
      original: fc.oneof(
        sides(100, 1200),
        fc.tuple(millimetres(300, 1200), millimetres(20, 200)).map((both) => both.join(' x ')),
      ),
      lamp_out: millimetres(300, 1500),
      lamp_height: millimetres(300, 1500),
      lamp_aim: millimetres(1, 300),
      lamp_spacing: fc.constantFrom('0', '400', '700', '1200', '2000'),
      beam_angle: fc.constantFrom('60', '120'),
      glossy: fc.constantFrom('yes', 'no'),
      lamp_radius: fc.constantFrom('50', '150'),
      lens_height: millimetres(400, 3000),
      curl: fc.constantFrom('0', '5', '-10'),
    }),
    aims: [EVEN, LAMP],
    trace: (sheet) => {
      const [width, height] = size(sheet, 'original')
      // It may be laid either way round, and the sheet says which.
      const laid = sheet.value('lay_it')
      const either = Math.min(spread(lampsOf(sheet), width, height), spread(lampsOf(sheet), height, width))
      if (laid === 'as it is')
        expect(spread(lampsOf(sheet), width, height)).toBeLessThanOrEqual(sheet.number('even_limit') * 1.01)
      // Turned, it reaches as far towards the arms as it is high.
      const [across, down] = laid === 'turned by 90°' ? [height, width] : [width, height]
      return {
        arms_cover: either / sheet.number('even_limit'),
        ...lowTraced(sheet),
        ...armsGlareTraced(sheet, [across / 2, down / 2]),
      }
    },
  },
  {
    name: 'transparencies',
    judges: [
      'sharp_enough',
      'lens_focuses',
      'aperture_on_lens',
      'room_enough',
      'depth_holds',
      'aperture_resolves',
      'column_reaches',
      'panel_reaches',
      'dust_gone',
    ],
    texts: together(
      camera,
      fc.record({
        film_format: fc.constantFrom('135', '6x6', '6x7', '6x9'),
        panel: fc.constantFrom('120 x 100', '200 x 150', '300 x 200'),
        panel_gap: millimetres(5, 80),
        panel_edge: fc.constantFrom('0', '10', '25'),
      }),
    ),
    aims: [SAMPLING, DEPTH, CONTRAST, COLUMN],
    trace: (sheet) => {
      const photograph = placed(sheet, faceOf(sheet))
      const film = [...size(sheet, 'original')].sort((a, b) => a - b) as [number, number]
      const panel = [...size(sheet, 'panel')].sort((a, b) => a - b) as [number, number]
      const rim = photograph.camera.focal / photograph.camera.aperture / 2
      const gapOf = sheet.number('panel_gap')
      // From the far side of the pupil past the film's edge down to the panel.
      const reach = film.map((side) => side / 2 + ((side / 2 + rim) * gapOf) / photograph.pupilDistance)
      const short = Math.max(
        ...reach.map((far, side) => (far + sheet.number('panel_edge')) / ((panel[side] as number) / 2)),
      )
      return {
        ...pictureTraced(sheet, photograph),
        ...columnTraced(sheet, photograph, faceOf(sheet)),
        panel_reaches: short,
        // From a speck on the panel through the rim of the pupil: where that ray crosses the film, either side.
        dust_gone:
          (30 * photograph.camera.sensor[0]) /
          photograph.camera.pixels[0] /
          (2 * photograph.image((rim * gapOf) / (photograph.pupilDistance + gapOf))),
      }
    },
  },
  {
    name: 'upright-original',
    judges: [
      'sharp_enough',
      'lens_focuses',
      'room_enough',
      'even_enough',
      'lamps_low',
      'lamps_clear',
      'frame_clear',
      'tripod_reaches',
      'room_behind',
    ],
    texts: together(
      camera,
      pair,
      fc.record({
        original: sides(100, 2500),
        lean: fc.constantFrom('0', '6', '15', '-8'),
        centre_height: fc.constantFrom('1250', '900', '1600'),
        frame_depth: millimetres(3, 80),
        tripod_least: fc.constantFrom('400', '1000'),
        tripod_greatest: fc.constantFrom('1300', '1700'),
        floor_free: millimetres(1000, 6000),
      }),
    ),
    aims: [SAMPLING, EVEN, LAMP, ['frame_gap', 'frame_shadow', 'mm', 1000]],
    trace: (sheet) => {
      // The face is the front of the frame's mount; nothing lies under it.
      const photograph = placed(sheet, 0)
      // The lens is set to the millimetre; the border takes that up.
      expect(framed(sheet, photograph)).toBeLessThan(1.02)
      const [width, height] = size(sheet, 'original')
      const gap = sheet.number('frame_gap')
      const deep = sheet.number('frame_depth')
      // Square to a face that leans back, the camera is higher than its centre.
      const lean = sheet.number('lean')
      const lensHeight = sheet.number('centre_height') + photograph.pupilDistance * Math.sin(lean)
      const { magnification: m, camera: own } = photograph
      const behind = own.focal * (2 + m + 1 / m) + own.gap
      // A ray from a lamp over the frame's edge, from the side where it is farthest out, meets the face here.
      const shadows = lampsOf(sheet).map(({ x, z }) => {
        const edge = width / 2 + gap
        const beyond = Math.abs(x) - edge
        return z <= deep ? Number.POSITIVE_INFINITY : beyond <= 0 ? 0 : (beyond * deep) / (z - deep)
      })
      return {
        ...pictureTraced(sheet, photograph),
        ...lightTraced(sheet, [width, height]),
        ...glareTraced(sheet, width / 2),
        frame_clear: Math.max(...shadows) / Math.max(gap, 1e-9),
        tripod_reaches:
          lensHeight <= 0
            ? Number.POSITIVE_INFINITY
            : Math.max(sheet.number('tripod_least') / lensHeight, lensHeight / sheet.number('tripod_greatest')),
        // The camera’s back and the person behind it.
        room_behind: (behind * Math.cos(lean) + 0.6) / sheet.number('floor_free'),
      }
    },
  },
]
