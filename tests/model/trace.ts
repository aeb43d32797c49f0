import { expect } from 'vitest'
import { readParts } from '../../src/cli/part-files.ts'
import { composeJob } from '../../src/worksheet/compose/job.ts'
import type { Worksheet } from '../../src/worksheet/index.ts'
import { Filled, readTemplate } from '../templates/open.ts'
import { type Camera, type Lamp, nearestReflection, Photograph, seenByReflection, spread } from './photograph.ts'

export type Texts = Readonly<Record<string, string>>
/**
 * What is required over what there is, by check: at most 1 where the job would succeed. Of what is bounded from both sides,
 * the ratio that a check which passes is judged by, and the one for a check that fails.
 */
export type Traced = Readonly<Record<string, number | { readonly ifPassed: number; readonly ifFailed: number }>>

const worksheets = new Map<string, Worksheet>()

/** A job of the shelf as it opens, or a sheet of some parts with an example in everything. */
export function worksheetOf(job: string, parts?: readonly string[]): Worksheet {
  if (!parts) return readTemplate(job)
  const worksheet = worksheets.get(job) ?? workedOut(job, parts)
  worksheets.set(job, worksheet)
  return worksheet
}

export function filled(job: string, texts: Texts, parts?: readonly string[]): Filled {
  const worksheet = worksheetOf(job, parts)
  const cells = worksheet.cells.map((cell) =>
    cell.kind === 'given' && texts[cell.name] !== undefined ? { ...cell, value: texts[cell.name] as string } : cell,
  )
  return new Filled({ ...worksheet, cells })
}

function workedOut(title: string, parts: readonly string[]): Worksheet {
  const library = readParts()
  const names = [...library.names].flatMap(([name, { usual, example }]) => {
    const value = usual ?? example
    return value === undefined ? [] : [[name, value] as const]
  })
  const own = parts.flatMap((part) => Object.entries(library.parts.get(part)?.example ?? {}))
  const example = Object.fromEntries([...names, ...own])
  return composeJob(library, { format: 'evenfield-job', title, parts, example, readings: {} })
}

export const has = (sheet: Filled, name: string): boolean => sheet.sheet.named(name) !== undefined
export const size = (sheet: Filled, name: string): readonly [number, number] => {
  const { width, height } = sheet.value(name) as { width: number; height: number }
  return [width, height]
}
const or = (sheet: Filled, name: string, otherwise: number): number =>
  has(sheet, name) ? sheet.number(name) : otherwise

export function cameraOf(sheet: Filled): Camera {
  return {
    sensor: size(sheet, 'sensor'),
    pixels: size(sheet, 'sensor_pixels'),
    focal: sheet.number('focal'),
    pupilRatio: or(sheet, 'pupil_ratio', 1),
    gap: or(sheet, 'principal_gap', 0),
    aperture: or(sheet, 'aperture', 8),
  }
}

/** The camera where the sheet says to put it, on a column or before an easel, over the plane in focus. */
export function placed(sheet: Filled, faceHeight: number): Photograph {
  const camera = cameraOf(sheet)
  const larger = sheet.number('magnification') > 1
  if (has(sheet, 'camera_out')) {
    // Before an easel the middle of the lens is placed; the sensor is behind it by the image distance.
    const lean = sheet.number('lean')
    const out = sheet.number('camera_out')
    const up = sheet.number('camera_height') - sheet.number('centre_height')
    const pupil = out * Math.cos(lean) + up * Math.sin(lean)
    const inverse = pupil / camera.focal - 1 / camera.pupilRatio
    return Photograph.at(camera, camera.focal * (2 + inverse + 1 / inverse) + camera.gap, larger)
  }
  const sensor = has(sheet, 'carriage')
    ? sheet.number('carriage') - or(sheet, 'sensor_to_carriage', 0) - faceHeight
    : sheet.number('sensor_height')
  return Photograph.at(camera, sensor, larger)
}

/** The coarser of both sides' pixels per metre of sensor: what is sampled is sampled both ways. */
export const coarser = ({ sensor, pixels }: Camera): number => Math.min(pixels[0] / sensor[0], pixels[1] / sensor[1])

export function lampsOf(sheet: Filled): Lamp[] {
  const beam = sheet.number('beam_angle')
  const aim = sheet.number('lamp_aim')
  if (has(sheet, 'left_out'))
    return [-1, 1].map((side) => ({
      x: side * sheet.number(side < 0 ? 'left_out' : 'right_out'),
      y: 0,
      z: sheet.number(side < 0 ? 'left_height' : 'right_height'),
      aimX: -side * aim,
      aimY: 0,
      beam,
      intensity: or(sheet, side < 0 ? 'left_intensity' : 'right_intensity', 1000),
    }))
  const z = sheet.number('lamp_height') - (has(sheet, 'camera_out') ? 0 : or(sheet, 'original_thickness', 0))
  const apart = or(sheet, 'lamp_spacing', 0)
  return [-1, 1].flatMap((side) =>
    (apart > 0 ? [apart / 2, -apart / 2] : [0]).map((y) => ({
      x: side * sheet.number('lamp_out'),
      y,
      z,
      aimX: -side * aim,
      aimY: y,
      beam,
      intensity: 1000,
    })),
  )
}

export const lightTraced = (sheet: Filled, [width, height]: readonly [number, number]): Traced => ({
  even_enough: spread(lampsOf(sheet), width, height) / sheet.number('even_limit'),
  ...lowTraced(sheet),
})

/** How high the highest lit point of a lamp is, seen from the middle of the face, against half a right angle. */
export function lowTraced(sheet: Filled): Traced {
  if (!has(sheet, 'lamps_low')) return {}
  const up = lampsOf(sheet).map(({ x, y, z }) => Math.atan2(z + sheet.number('lamp_radius'), Math.hypot(x, y)))
  return { lamps_low: Math.max(...up) / (Math.PI / 4) }
}

export function glareTraced(sheet: Filled, half: number, shift = 0, tilt?: number): Traced {
  if (!has(sheet, 'lamps_clear') || sheet.value('glossy') !== true) return {}
  const pupil = sheet.number('lens_height')
  const curl = tilt ?? (has(sheet, 'page_slope') ? 0 : Math.abs(or(sheet, 'curl', 0)))
  const ratios = lampsOf(sheet).map(({ x, z }) => {
    const lens = Math.sign(x) * shift
    const seen = seenByReflection(lens, pupil, [lens - half, lens + half], z, curl)
    return seen / Math.max(Math.abs(x) - sheet.number('lamp_radius'), 1e-9)
  })
  return { lamps_clear: Math.max(...ratios) }
}

/** Glare from lamps beside each other on arms, with the original laid across: a lamp may be clear of it in either direction. */
export function armsGlareTraced(sheet: Filled, half: readonly [number, number]): Traced {
  if (!has(sheet, 'lamps_clear') || sheet.value('glossy') !== true) return {}
  const pupil = sheet.number('lens_height')
  const curl = Math.abs(or(sheet, 'curl', 0))
  const radius = sheet.number('lamp_radius')
  const lamps = lampsOf(sheet)
  const traced = Math.max(...lamps.map((lamp) => radius / Math.max(nearestReflection(pupil, half, lamp, curl), 1e-9)))
  if (curl === 0) return { lamps_clear: traced }
  // A corner that curls both ways at once reaches as far as an edge does in each direction.
  const reached = lamps.map(({ x, y, z }) => {
    const [far, long] = half.map((side) => seenByReflection(0, pupil, [-side, side], z, curl)) as [number, number]
    return radius / Math.max(Math.hypot(Math.max(0, Math.abs(x) - far), Math.max(0, Math.abs(y) - long)), 1e-9)
  })
  return { lamps_clear: { ifPassed: traced, ifFailed: Math.max(traced, ...reached) } }
}

const toCentimetre = (metres: number): number => Math.ceil(100 * metres - 1e-6) / 100

/** A black mask round the lens, over an original of two sizes: whether it hides the lens’s surroundings, and takes no light. */
export function maskTraced(sheet: Filled, [width, height]: readonly [number, number]): Traced {
  const hangs = sheet.number('mask_height') - or(sheet, 'original_thickness', 0)
  const [wide, long] = size(sheet, 'mask')
  const curl = Math.abs(or(sheet, 'curl', 0))
  const reflected = (half: number) =>
    seenByReflection(0, sheet.number('lens_height'), [-half, half], Math.max(hangs, 0), curl)
  if (sheet.value('masked') !== true) return { mask_fits: 0, mask_out_of_light: 0 }
  // From the nearest point of a lamp to a point of the original, a straight line passes the mask's edge or not.
  const inLight = lampsOf(sheet).map(({ x, z }) => {
    if (hangs >= z) return 0
    const edge = Math.abs(x) - sheet.number('lamp_radius')
    const passes = Array.from({ length: 41 }, (_, i) => {
      const point = (i / 40 - 0.5) * width
      return point + ((edge - point) * hangs) / z
    })
    return wide / 2 / Math.max(Math.min(...passes), 1e-9)
  })
  return {
    mask_fits: {
      ifPassed: Math.max(reflected(width / 2) / (wide / 2), reflected(height / 2) / (long / 2)),
      // A mask is cut to the centimetre.
      ifFailed: Math.max(toCentimetre(2 * reflected(width / 2)) / wide, toCentimetre(2 * reflected(height / 2)) / long),
    },
    mask_out_of_light: Math.max(...inLight),
  }
}

/** Ceiling and wall: seen by reflection in a glossy face of two sizes, where no mask is in the way. */
export function roomTraced(sheet: Filled, [width, height]: readonly [number, number]): Traced {
  const pupil = sheet.number('lens_height')
  const curl = Math.abs(sheet.number('curl'))
  const up = sheet.number('opposite_distance') - sheet.number('original_thickness')
  const reached = Math.max(
    ...[width, height].map((side) => seenByReflection(0, pupil, [-side / 2, side / 2], Math.max(up, 0), curl)),
  )
  const isDark = (name: string, ...dark: readonly string[]): boolean => dark.includes(sheet.value(name) as string)
  const { mask_fits: mask } = maskTraced(sheet, [width, height]) as {
    mask_fits: { ifPassed: number; ifFailed: number }
  }
  const covered = sheet.value('masked') === true ? mask : { ifPassed: Infinity, ifFailed: Infinity }
  const either = (other: number) => ({
    ifPassed: Math.min(other, covered.ifPassed),
    ifFailed: Math.min(other, covered.ifFailed),
  })
  const matt = sheet.value('glossy') !== true
  return {
    ceiling_clear: either(matt || isDark('opposite', 'dark cloth', 'a dark room') ? 0 : Infinity),
    wall_clear: either(matt || isDark('wall', 'black or grey') ? 0 : reached / sheet.number('wall_distance')),
  }
}

/** What the lens has to do: focus so close, close so far, and leave room before its rim to what stands out nearest to it. */
function lensTraced(sheet: Filled, { camera, magnification }: Photograph): Traced {
  // From the original to the front principal plane, 1/a + 1/b = 1/f with b = m a; the rim is before it.
  const toPrincipalPlane = camera.focal * (1 + 1 / magnification)
  // In focus half-way: a page or an object stands out towards the lens by half of its depth.
  const isDeep = has(sheet, 'page_arc') || has(sheet, 'object_top')
  const standsOut = isDeep ? or(sheet, 'wanted_depth', 0) / 2 : 0
  const room = toPrincipalPlane - or(sheet, 'principal_inset', 0) - standsOut
  return {
    ...(has(sheet, 'lens_focuses') && { lens_focuses: magnification / sheet.number('lens_greatest') }),
    ...(has(sheet, 'aperture_on_lens') && { aperture_on_lens: camera.aperture / sheet.number('lens_smallest') }),
    ...(has(sheet, 'room_enough') && {
      room_enough: room > 0 ? sheet.number('room_required') / room : Number.POSITIVE_INFINITY,
    }),
  }
}

/** Sampling, depth and contrast of a face that keeps within a depth, and of the part of it that slopes most. */
export function pictureTraced(sheet: Filled, photograph: Photograph, slope = 0): Traced {
  const { camera } = photograph
  const pixels = coarser(camera)
  const sloping = (x: number) => x * Math.tan(slope)
  const perMetre = photograph.sampling(pixels, 0, slope ? sloping : undefined)
  const required = sheet.number('wanted_sampling')
  const local = perMetre / pixels
  return {
    sharp_enough: required / perMetre,
    ...lensTraced(sheet, photograph),
    ...(has(sheet, 'blur_pixels') && {
      // The blur allowed is counted in pixels along the width.
      depth_holds:
        (photograph.blurOver(sheet.number('wanted_depth')) * camera.pixels[0]) /
        camera.sensor[0] /
        sheet.number('blur_pixels'),
    }),
    ...(has(sheet, 'aperture_resolves') && {
      aperture_resolves:
        sheet.number('contrast_limit') /
        Math.max(photograph.contrast(required / 2 / local, sheet.number('wavelength')), 1e-12),
    }),
  }
}

export function columnTraced(sheet: Filled, photograph: Photograph, faceHeight: number): Traced {
  if (!has(sheet, 'column_reaches')) return {}
  const { focal, gap } = photograph.camera
  const m = photograph.magnification
  const sensor = faceHeight + focal * (1 + 1 / m) + gap + focal * (1 + m)
  // The mark is read on the column, higher than the sensor by what was measured between them.
  return { column_reaches: (sensor + or(sheet, 'sensor_to_carriage', 0)) / sheet.number('column_reach') }
}

/** Whether every corner of an original with its border is on the sensor of one frame: at most 1 where it is. */
export function framed(sheet: Filled, photograph: Photograph): number {
  const [width, height] = size(sheet, 'original')
  const border = sheet.number('border')
  const [across, down] = sheet.value('turned') === true ? [1, 0] : [0, 1]
  const { sensor } = photograph.camera
  return Math.max(
    photograph.image(width / 2 + border) / ((sensor[across] as number) / 2),
    photograph.image(height / 2 + border) / ((sensor[down] as number) / 2),
  )
}

/** A page as part of a circle, from its chord and the length of its arc: how far it rises, and its slope at either end. */
export function arc(chord: number, length: number): { rise: number; slope: number } {
  if (length <= chord) return { rise: 0, slope: 0 }
  // sin(θ)/θ = chord/arc for half the angle θ, by bisection.
  let [low, high] = [0, Math.PI]
  for (let i = 0; i < 100; i++) {
    const half = (low + high) / 2
    if (Math.sin(half) / half > chord / length) low = half
    else high = half
  }
  const radius = length / (2 * low)
  return { rise: radius * (1 - Math.cos(low)), slope: low }
}

export const faceOf = (sheet: Filled): number => or(sheet, 'original_thickness', 0)
export function sheetTraced(sheet: Filled): Traced {
  const photograph = placed(sheet, faceOf(sheet))
  expect(framed(sheet, photograph)).toBeLessThan(1.001)
  const [width, height] = size(sheet, 'original')
  return {
    ...pictureTraced(sheet, photograph),
    ...columnTraced(sheet, photograph, faceOf(sheet)),
    ...(has(sheet, 'lamps') && lightTraced(sheet, [width, height])),
    ...(has(sheet, 'lamps') && glareTraced(sheet, width / 2)),
  }
}
