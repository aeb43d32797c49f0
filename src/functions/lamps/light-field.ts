/**
 * The field of light of point lamps on a flat original, on plain numbers in metres, candela and radians.
 * The origin is the centre of the original, x to the right, y up the original, z towards the camera.
 */
export interface LampNumbers {
  readonly x: number
  readonly y: number
  readonly z: number
  /** Where the lamp's axis meets the plane of the original. */
  readonly aim_x: number
  readonly aim_y: number
  /** On the axis, in candela. */
  readonly intensity: number
  /** The full angle between the directions of half the intensity, in radians. */
  readonly beam_angle: number
}

/** The power n for which cos^n falls to a half at half the beam angle (radians, above 0 and below π). */
export function spreadPower(beamAngle: number): number {
  const n = Math.log(0.5) / Math.log(Math.cos(beamAngle / 2))
  const whole = Math.round(n)
  // cos 60° is not exactly a half in floating point, and a whole power is far quicker to compute.
  return whole > 0 && Math.abs(n - whole) < 1e-9 ? whole : n
}

/** A lamp made ready for many points: its constant factor, its axis and its power. */
interface Ready {
  readonly x: number
  readonly y: number
  readonly z: number
  readonly ux: number
  readonly uy: number
  /** The axis' share of depth, counted at the plane of the original: −z times the axis' z. */
  readonly depth: number
  readonly n: number
  /** Intensity times height. */
  readonly strength: number
}

function ready(lamp: LampNumbers): Ready {
  const { x, y, z, aim_x, aim_y, intensity } = lamp
  const length = Math.hypot(aim_x - x, aim_y - y, z)
  return {
    x,
    y,
    z,
    ux: (aim_x - x) / length,
    uy: (aim_y - y) / length,
    depth: (z * z) / length,
    n: spreadPower(lamp.beam_angle),
    strength: intensity * z,
  }
}

// Twice as fast as Math.pow here, and as near as a cosine between 0 and 1 needs.
const power = (cosine: number, n: number): number => Math.exp(n * Math.log(cosine))

function fromLamp(lamp: Ready, x: number, y: number): number {
  const dx = x - lamp.x
  const dy = y - lamp.y
  const square = dx * dx + dy * dy + lamp.z * lamp.z
  const along = dx * lamp.ux + dy * lamp.uy + lamp.depth
  if (along <= 0) return 0
  if (lamp.n === 1) return (lamp.strength * along) / (square * square)
  const d = Math.sqrt(square)
  return (lamp.strength * power(along / d, lamp.n)) / (square * d)
}

/** One lamp's illuminance as a function of the point: for many points without a list of lamps. */
export function pointLight(lamp: LampNumbers): (x: number, y: number) => number {
  const prepared = ready(lamp)
  return (x, y) => fromLamp(prepared, x, y)
}

/** Illuminance in lux at (x, y) of the original: the sum over the lamps of I0 cos^n θ · cos(incidence)/d². */
export function illuminanceAt(lamps: readonly LampNumbers[], x: number, y: number): number {
  let sum = 0
  for (const lamp of lamps) sum += fromLamp(ready(lamp), x, y)
  return sum
}

/**
 * Fills a grid of illuminances (lux), row by row from the lower left corner (−width/2, −height/2) to the upper right;
 * the outermost points are on the edges. `columns` and `rows` are at least 2.
 */
export function mapField(
  lamps: readonly LampNumbers[],
  width: number,
  height: number,
  columns: number,
  rows: number,
  into: Float64Array = new Float64Array(columns * rows),
): Float64Array {
  into.fill(0)
  const stepX = width / (columns - 1)
  const stepY = height / (rows - 1)
  for (const lamp of lamps) {
    const { x: lampX, y: lampY, z, ux, uy, depth, n, strength } = ready(lamp)
    const zz = z * z
    let at = 0
    for (let row = 0; row < rows; row++) {
      const dy = -height / 2 + row * stepY - lampY
      const across = dy * dy + zz
      const alongY = dy * uy + depth
      for (let column = 0; column < columns; column++, at++) {
        const dx = -width / 2 + column * stepX - lampX
        const square = dx * dx + across
        const along = dx * ux + alongY
        if (along <= 0) continue
        if (n === 1) into[at] = (into[at] as number) + (strength * along) / (square * square)
        else {
          const d = Math.sqrt(square)
          into[at] = (into[at] as number) + (strength * power(along / d, n)) / (square * d)
        }
      }
    }
  }
  return into
}

export interface Evenness {
  readonly least: number
  readonly greatest: number
  readonly mean: number
  /** greatest over least, in stops; infinite where some or all of the field is not lit. */
  readonly spread: number
  /** least over mean. */
  readonly uniformity: number
  /** (greatest − least)/(greatest + least). */
  readonly plus_minus: number
}

/** Less light than this, in lux, is none. */
export const DARK = 1e-12

/** How many stops lie between two illuminances (lux); infinite where there is no light. */
export const spreadOf = (least: number, greatest: number): number =>
  greatest > DARK ? Math.log2(greatest / least) : Number.POSITIVE_INFINITY

const LEAST_SAMPLES = 41
const MOST_SAMPLES = 161

/** An odd number of samples along a side, fine enough for the lamps' nearest and narrowest spots. */
function samplesAlong(side: number, lamps: readonly LampNumbers[]): number {
  let finest = Number.POSITIVE_INFINITY
  for (const lamp of lamps) {
    const reach = Math.hypot(lamp.x - lamp.aim_x, lamp.y - lamp.aim_y, lamp.z)
    finest = Math.min(finest, lamp.z, reach * Math.tan(Math.min(lamp.beam_angle, 2) / 2))
  }
  const needed = 2 * Math.ceil((4 * side) / finest) + 1
  return Math.max(LEAST_SAMPLES, Math.min(MOST_SAMPLES, needed))
}

const simpson = (i: number, count: number): number => (i === 0 || i === count - 1 ? 1 : i % 2 === 1 ? 4 : 2)

/** A rectangle centred on the origin, sampled to its edges, and the indices of its least and greatest illuminance. */
export function sampleField(lamps: readonly LampNumbers[], width: number, height: number) {
  const columns = samplesAlong(width, lamps)
  const rows = samplesAlong(height, lamps)
  const field = mapField(lamps, width, height, columns, rows)
  let [least, greatest] = [0, 0]
  for (let at = 1; at < field.length; at++) {
    if ((field[at] as number) < (field[least] as number)) least = at
    if ((field[at] as number) > (field[greatest] as number)) greatest = at
  }
  return { columns, rows, field, least, greatest }
}

/** The evenness of a rectangle centred on the origin; the mean is by area (Simpson's rule). */
export function evennessOf(lamps: readonly LampNumbers[], width: number, height: number): Evenness {
  const { columns, rows, field, ...extremes } = sampleField(lamps, width, height)
  const [least, greatest] = [field[extremes.least] as number, field[extremes.greatest] as number]
  let sum = 0
  for (let row = 0, at = 0; row < rows; row++) {
    const weight = simpson(row, rows)
    for (let column = 0; column < columns; column++, at++)
      sum += weight * simpson(column, columns) * (field[at] as number)
  }
  const mean = sum / (9 * (columns - 1) * (rows - 1))
  return {
    least,
    greatest,
    mean,
    spread: spreadOf(least, greatest),
    uniformity: greatest > DARK ? least / mean : 0,
    plus_minus: greatest > DARK ? (greatest - least) / (greatest + least) : 1,
  }
}

/** The full-angle beam of a surface that spreads as a diffuser does, I ∝ cos θ. */
const DIFFUSER_BEAM = (2 * Math.PI) / 3

/**
 * A diffuser of `width` by `height`, square to the lamp's axis and centred on the lamp, as grid × grid points with
 * parallel axes that share the intensity. The width is parallel to the original; for a lamp straight above its aim
 * it is along x. The points are at the middles of equal cells, so the grid converges as 1/grid².
 */
export function diffuserPoints(lamp: LampNumbers, width: number, height: number, grid: number): LampNumbers[] {
  const length = Math.hypot(lamp.aim_x - lamp.x, lamp.aim_y - lamp.y, lamp.z)
  const a = { x: (lamp.aim_x - lamp.x) / length, y: (lamp.aim_y - lamp.y) / length, z: -lamp.z / length }
  const level = Math.hypot(a.x, a.y)
  const upright = level < 1e-9
  const u = upright ? { x: 1, y: 0 } : { x: -a.y / level, y: a.x / level }
  // v = u × a, up to a sign that a symmetrical grid does not see.
  const v = { x: u.y * a.z, y: -u.x * a.z, z: u.x * a.y - u.y * a.x }
  const intensity = lamp.intensity / (grid * grid)
  return Array.from({ length: grid * grid }, (_, i) => {
    const across = (((i % grid) + 0.5) / grid - 0.5) * width
    const up = ((Math.floor(i / grid) + 0.5) / grid - 0.5) * height
    const x = lamp.x + across * u.x + up * v.x
    const y = lamp.y + across * u.y + up * v.y
    const z = lamp.z + up * v.z
    const run = -z / a.z
    return { x, y, z, aim_x: x + run * a.x, aim_y: y + run * a.y, intensity, beam_angle: DIFFUSER_BEAM }
  })
}
