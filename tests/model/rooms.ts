import fc from 'fast-check'
import type { Filled } from '../templates/open.ts'
import { camera, EVEN, LAMP, millimetres, rounded, SAMPLING, sides, together } from './givens.ts'
import type { Job } from './jobs.ts'
import { type Lamp, lightAt, spread } from './photograph.ts'
import {
  armsGlareTraced,
  glareTraced,
  lampsOf,
  lowTraced,
  maskTraced,
  pictureTraced,
  placed,
  roomTraced,
  size,
} from './trace.ts'

const stops = (most: number, least: number): number => Math.log2(most / least)

/** The two lamps of a sheet as the readings of a peg’s shadows say they are, once set where the sheet says. */
function broughtIntoBalance(sheet: Filled): Lamp[] {
  const aim = sheet.number('lamp_aim')
  const room = sheet.number('ambient')
  return (['left', 'right'] as const).map((side) => {
    const sign = side === 'left' ? -1 : 1
    const lamp = (out: number, up: number, intensity: number): Lamp => ({
      x: sign * out,
      y: 0,
      z: up,
      // A lamp that is moved straight away from the centre goes on looking the same way: past it as many times farther.
      aimX: (-sign * aim * out) / sheet.number(`${side}_out`),
      aimY: 0,
      beam: sheet.number(side === 'left' ? 'beam_angle' : 'right_beam'),
      intensity,
    })
    const shadow = sheet.number(`${side}_shadow`) - room
    const found = shadow / lightAt(lamp(sheet.number(`${side}_out`), sheet.number(`${side}_height`), 1), 0, 0)
    return lamp(sheet.number(`${side}_to`), sheet.number(`${side}_up_to`), found * sheet.number(`${side}_power`))
  })
}

const unmatchedJob: Job = {
  name: 'unmatched-lamps',
  judges: ['even_enough', 'brought_even', 'room_dark', 'colours_match', 'lamps_render', 'lamps_low', 'lamps_clear'],
  texts: fc.record({
    original: sides(60, 900),
    left_out: millimetres(400, 2500),
    left_height: millimetres(300, 2000),
    right_out: millimetres(400, 2500),
    right_height: millimetres(300, 2000),
    lamp_aim: millimetres(1, 400),
    beam_angle: fc.constantFrom('60', '120'),
    right_beam: fc.constantFrom('60', '100', '140'),
    left_shadow: millimetres(200, 900),
    right_shadow: millimetres(200, 900),
    ambient: millimetres(2, 60),
    power_step: fc.constantFrom('1/3', '1/10', '1'),
    way: fc.constantFrom('turn it down', 'move it out'),
    left_colour: fc.constantFrom('3200', '5400', '5600'),
    right_colour: fc.constantFrom('5200', '5600', '6500'),
    left_rendering: fc.constantFrom('88', '95'),
    right_rendering: fc.constantFrom('89', '90', '98'),
    lens_height: millimetres(500, 3000),
    glossy: fc.constantFrom('yes', 'no'),
    curl: fc.constantFrom('0', '5'),
  }),
  aims: [
    ['even_limit', 'spread', 'stop', 1, [0.001, 2]],
    ['colour_limit', 'colour_apart', 'mired', 1e6, [0.1, 300]],
  ],
  trace: (sheet) => {
    const lamps = broughtIntoBalance(sheet)
    const [left, right] = lamps.map((lamp) => lightAt(lamp, 0, 0)) as [number, number]
    const [width, height] = size(sheet, 'original')
    const limit = sheet.number('even_limit')
    const [leftShadow, rightShadow, room] = ['left_shadow', 'right_shadow', 'ambient'].map((name) =>
      sheet.number(name),
    ) as [number, number, number]
    const mired = (name: string): number => 1e6 / sheet.number(name)
    return {
      even_enough: spread(lamps, width, height) / limit,
      brought_even: Math.abs(stops(left, right)) / limit,
      room_dark: (10 * room) / Math.min(leftShadow, rightShadow),
      colours_match: Math.abs(mired('left_colour') - mired('right_colour')) / (1e6 * sheet.number('colour_limit')),
      lamps_render:
        sheet.number('rendering_limit') / Math.min(sheet.number('left_rendering'), sheet.number('right_rendering')),
      ...lowTraced(sheet),
      ...glareTraced(sheet, width / 2),
    }
  },
}

const backdropJob: Job = {
  name: 'backdrop',
  judges: ['backdrop_fills', 'back_even', 'lamps_unseen', 'no_spill', 'sharp_enough', 'lens_focuses', 'room_enough'],
  texts: together(
    camera,
    fc.record({
      original: sides(60, 900),
      border: fc.constantFrom('0', '20'),
      backdrop_gap: millimetres(500, 4000),
      backdrop: sides(600, 5000),
      back_out: millimetres(300, 3000),
      back_off: millimetres(200, 3000),
      back_aim: millimetres(1, 800),
      back_reach: fc.constant('1500'),
      back_spacing: fc.constantFrom('0', '800'),
      back_beam: fc.constantFrom('60', '100'),
      back_radius: fc.constantFrom('50', '150'),
    }),
  ),
  aims: [
    SAMPLING,
    ['back_limit', 'back_spread', 'stop', 1, [0.01, 3]],
    ['back_out', 'view_there', 'mm', 1000, [100, 20_000]],
  ],
  trace: (sheet) => {
    const photograph = placed(sheet, 0)
    const gap = sheet.number('backdrop_gap')
    const turned = sheet.value('turned') === true
    const sensor = photograph.camera.sensor.map((side) => side / 2)
    const [across, down] = (turned ? [sensor[1], sensor[0]] : sensor) as [number, number]
    // The backdrop is behind the plane in focus: its edges have to be drawn beyond the sensor’s.
    const [wide, high] = size(sheet, 'backdrop').map((side) => photograph.image(side / 2, -gap)) as [number, number]
    const seen = [across, down].map((half) => (2 * half) / photograph.image(1, -gap)) as [number, number]
    const [out, off, radius] = ['back_out', 'back_off', 'back_radius'].map((name) => sheet.number(name)) as [
      number,
      number,
      number,
    ]
    const apart = sheet.number('back_spacing')
    const aim = sheet.number('back_aim')
    const lamps = [-1, 1].flatMap((side) =>
      (apart > 0 ? [apart / 2, -apart / 2] : [0]).map((y) => ({
        x: side * out,
        y,
        z: off,
        aimX: -side * aim,
        aimY: y,
        beam: sheet.number('back_beam'),
        intensity: 1,
      })),
    )
    // A lamp nearer than the lens is behind the camera, and not in the frame.
    const above = off - gap
    const inner = above < photograph.pupilDistance ? photograph.image(Math.max(out - radius, 0), above) : Infinity
    return {
      ...pictureTraced(sheet, photograph),
      backdrop_fills: Math.max(across / wide, down / high),
      back_even: spread(lamps, ...seen) / sheet.number('back_limit'),
      lamps_unseen: across / Math.max(inner, 1e-12),
      no_spill: (off + radius) / gap,
    }
  },
}

/** Light 1 + M sin 2πft added up slice by slice while a shutter is open, from many starts: the most and the least. */
function whileOpen(time: number, frequency: number, modulation: number): readonly [most: number, least: number] {
  const slices = Math.ceil(60 * Math.max(1, time * frequency))
  let [most, least] = [0, Number.POSITIVE_INFINITY]
  for (let start = 0; start < 120; start++) {
    let light = 0
    for (let slice = 0; slice < slices; slice++)
      light += 1 + modulation * Math.sin(2 * Math.PI * (start / 120 + ((slice + 0.5) / slices) * time * frequency))
    most = Math.max(most, light / slices)
    least = Math.min(least, light / slices)
  }
  return [most, least]
}

const flickerJob: Job = {
  name: 'flicker',
  judges: ['no_flicker', 'swing_known', 'test_short'],
  texts: fc
    .record({
      frequency: fc.constantFrom(100, 120, 300),
      swing: fc.double({ min: 0.02, max: 0.9, noNaN: true }),
      stated: fc.double({ min: 0.6, max: 1.4, noNaN: true }),
      time: fc.constantFrom(1 / 2, 1 / 15, 1 / 30, 1 / 50, 1 / 60, 1 / 75, 1 / 90, 1 / 125, 1 / 250),
      test: fc.double({ min: 0.04, max: 0.4, noNaN: true }),
      ripple_limit: fc.constantFrom('0.02', '0.05', '0.1', '0.3'),
    })
    .map(({ frequency, swing, stated, time, test, ripple_limit }) => {
      // The frames are taken and read in a linear picture of 16 bits, half of full white on average.
      const [most, least] = whileOpen(test / frequency, frequency, swing)
      return {
        flicker: String(frequency),
        modulation: String(Math.min(99, 100 * swing * stated)),
        time: `${time} s`,
        test_time: `${test / frequency} s`,
        code_brightest: String(Math.round(30_000 * most)),
        code_darkest: String(Math.round(30_000 * least)),
        full_scale: '65535',
        encoding: 'linear',
        ripple_limit,
      }
    }),
  aims: [],
  trace: (sheet) => {
    const [frequency, time, test] = ['flicker', 'time', 'test_time'].map((name) => sheet.number(name)) as [
      number,
      number,
      number,
    ]
    // A shutter runs whole thirds of a stop, whatever its mark says: either may be meant.
    const marked = 2 ** (Math.round(3 * Math.log2(time)) / 3)
    const ripple = Math.max(
      ...[time, marked].map((open) => stops(...whileOpen(open, frequency, sheet.number('modulation')))),
    )
    // The swing that shows in frames of a short time is the lamps’ own, a little evened out.
    const shown = (modulation: number): number => {
      const [most, least] = whileOpen(test, frequency, modulation)
      return most / least
    }
    const read = sheet.number('code_brightest') / sheet.number('code_darkest')
    const stated = shown(sheet.number('modulation'))
    return {
      no_flicker: ripple / sheet.number('ripple_limit'),
      swing_known: (read - 1) / (stated - 1),
      // At a quarter of a period nine tenths of the swing are left: sin(π/4)/(π/4).
      test_short: Math.sin(Math.PI / 4) / (Math.PI / 4) / ((shown(0.01) - 1) / 0.02),
    }
  },
}

/**
 * How many pixels two opposite edges of a frame differ by, on a camera that looks askew: a square to the board laid out by
 * its corners, each looked at along its own ray.
 */
function keystone(tilt: number, distance: number, field: number, pixels: number): number {
  const drawn = (x: number, y: number): number => {
    // The board turned by the tilt about the point in the middle of the frame.
    const away = distance + y * Math.sin(tilt)
    return x / away
  }
  const edge = (y: number): number => drawn(0.5, y) - drawn(-0.5, y)
  return (Math.abs(edge(-field / 2) / edge(field / 2)) - 1) * pixels
}

const squareJob: Job = {
  name: 'square-and-level',
  judges: ['mirror_square', 'level_square', 'phone_square', 'frame_square', 'edges_straight'],
  texts: fc.record({
    allowed_pixels: fc.constantFrom('2', '6', '20'),
    sensor_pixels: fc.constantFrom('6000 x 4000', '4000 x 6000', '11656 x 8742'),
    field: millimetres(50, 2000),
    lens_height: millimetres(300, 3000),
    mirror_offset: fc.double({ min: -8, max: 8, noNaN: true }).map(rounded),
    sensitivity: fc.constantFrom('0.1', '0.3', '1'),
    board_divisions: fc.constantFrom('-2', '0', '1'),
    camera_divisions: fc.constantFrom('-3', '0', '2'),
    phone_board: fc.constantFrom('-0.1', '0', '0.2'),
    phone_camera: fc.constantFrom('-0.2', '0.1', '0.3'),
    near_edge: fc.constantFrom('4000', '4004', '4010'),
    far_edge: fc.constantFrom('4000', '4003', '4007'),
    distortion: fc.constantFrom('-0.5', '-0.1', '0', '0.03', '0.2'),
  }),
  aims: [],
  trace: (sheet) => {
    const pixels = [...size(sheet, 'sensor_pixels')].sort((a, b) => a - b) as [number, number]
    const allowed = sheet.number('allowed_pixels')
    const [field, distance] = [sheet.number('field'), sheet.number('lens_height')]
    const off = (tilt: number): number => keystone(Math.abs(tilt), distance, field, pixels[1]) / allowed
    const slope = (divisions: number): number => Math.atan(divisions * sheet.number('sensitivity'))
    // The square’s near and far edges are as far apart as they are long; the frame reaches farther by its short side.
    const [near, far] = [sheet.number('near_edge'), sheet.number('far_edge')]
    const converges = Math.abs(near / far - 1) / near
    // A point at the middle of the long edge is moved out by δ (r/R)³ R, its corner by δ R: the edge bows by the difference.
    const [short, long] = pixels.map((side) => side / 2) as [number, number]
    const corner = Math.hypot(short, long)
    const outwards = (x: number): number => {
      const r = Math.hypot(x, short)
      return short * (1 + sheet.number('distortion') * (r / corner) ** 2)
    }
    return {
      mirror_square: off(Math.atan2(sheet.number('mirror_offset'), distance)),
      level_square: off(slope(sheet.number('camera_divisions')) - slope(sheet.number('board_divisions'))),
      phone_square: off(sheet.number('phone_camera') - sheet.number('phone_board')),
      frame_square: (converges * pixels[0] * pixels[1]) / allowed,
      edges_straight: Math.abs(outwards(long) - outwards(0)) / allowed,
    }
  },
}

/** An original on a stand’s arms, laid either way round, with a mask round the lens and a light ceiling and walls. */
const maskedOnArms: Job = {
  name: 'a glossy original on arms',
  parts: ['sheet', 'arms', 'reflections'],
  judges: ['arms_cover', 'lamps_low', 'lamps_clear', 'mask_fits', 'mask_out_of_light', 'ceiling_clear', 'wall_clear'],
  texts: together(
    fc.record({
      original: sides(60, 900),
      border: fc.constant('0'),
      lamp_out: millimetres(300, 1800),
      lamp_height: millimetres(300, 1800),
      lamp_aim: millimetres(1, 300),
      lamp_spacing: fc.constantFrom('0', '500', '1200'),
      beam_angle: fc.constantFrom('60', '120'),
      lamp_radius: fc.constantFrom('30', '100'),
      lens_height: millimetres(500, 2500),
      curl: fc.constantFrom('0', '4'),
      original_thickness: fc.constantFrom('0', '20'),
      glossy: fc.constant('yes'),
    }),
    fc.record({
      opposite: fc.constantFrom('something pale', 'dark cloth'),
      opposite_distance: millimetres(1500, 3000),
      wall: fc.constantFrom('pale', 'black or grey'),
      wall_distance: millimetres(300, 3000),
      masked: fc.constantFrom('yes', 'yes', 'no'),
      mask: sides(100, 2500),
      hangs: fc.double({ min: 0.3, max: 0.98, noNaN: true }),
    }),
  ).map(({ hangs, ...all }) => ({ ...all, mask_height: rounded(Number(hangs) * Number(all.lens_height)) })),
  aims: [EVEN, LAMP],
  trace: (sheet) => {
    const [width, height] = size(sheet, 'original')
    const laid = sheet.value('lay_it') === 'turned by 90°' ? ([height, width] as const) : ([width, height] as const)
    const either = Math.min(spread(lampsOf(sheet), width, height), spread(lampsOf(sheet), height, width))
    return {
      arms_cover: either / sheet.number('even_limit'),
      ...lowTraced(sheet),
      ...armsGlareTraced(sheet, [laid[0] / 2, laid[1] / 2]),
      ...maskTraced(sheet, laid),
      ...roomTraced(sheet, laid),
    }
  },
}

export const ROOM_JOBS: readonly Job[] = [unmatchedJob, backdropJob, flickerJob, squareJob, maskedOnArms]
