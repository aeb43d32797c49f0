/**
 * A photograph of an original, traced from first principles and with none of the project's own functions: rays through
 * the pupils of a thick lens, lamps point by point, diffraction as the overlap of two displaced pupils. Metres, radians,
 * pixels. The geometry is that of any textbook of optics: conjugates of a thick lens (1/a + 1/b = 1/f from its principal
 * planes), pupils of ratio p at f (1/m + 1/p) before the original and f (m + p) behind the sensor.
 */

export interface Camera {
  readonly sensor: readonly [number, number]
  readonly pixels: readonly [number, number]
  readonly focal: number
  /** Exit pupil over entrance pupil. */
  readonly pupilRatio: number
  /** Between the principal planes. */
  readonly gap: number
  /** As marked: focal length over the entrance pupil's diameter. */
  readonly aperture: number
}

/** A camera over a plane in focus, at the magnification that its distance gives. */
export class Photograph {
  readonly camera: Camera
  readonly magnification: number
  /** From the plane in focus to the entrance pupil. */
  readonly pupilDistance: number

  private constructor(camera: Camera, magnification: number) {
    this.camera = camera
    this.magnification = magnification
    this.pupilDistance = camera.focal * (1 / magnification + 1 / camera.pupilRatio)
  }

  /** From how far the sensor is from the plane in focus: a + b + gap, solved for m on the side of 1:1 that is meant. */
  static at(camera: Camera, sensorToPlane: number, larger: boolean): Photograph {
    const sum = (sensorToPlane - camera.gap) / camera.focal - 2
    const root = Math.sqrt(Math.max(0, sum * sum - 4))
    return new Photograph(camera, larger ? (sum + root) / 2 : (sum - root) / 2)
  }

  /** Where a point x off the axis and z above the plane in focus falls on the sensor, in metres from its middle. */
  image(x: number, z = 0): number {
    return (this.magnification * x * this.pupilDistance) / (this.pupilDistance - z)
  }

  /** The pixels per metre of surface at x, on a surface of height z(x), looked at over a hundredth of a millimetre. */
  sampling(pixelsPerMetre: number, x: number, height: (x: number) => number = () => 0): number {
    const step = 1e-5
    const rise = height(x + step / 2) - height(x - step / 2)
    const drawn = this.image(x + step / 2, height(x + step / 2)) - this.image(x - step / 2, height(x - step / 2))
    return (Math.abs(drawn) * pixelsPerMetre) / Math.hypot(step, rise)
  }

  /** The blur at both ends of a depth that is laid about the plane in focus so that they are the same. */
  blurOver(depth: number): number {
    const { focal, aperture } = this.camera
    const between = this.pupilDistance
    // (s − n)/n = (n + T − s)/(n + T), solved for the near end n.
    const near = (between - depth + Math.hypot(between, depth)) / 2
    return (this.magnification * (focal / aperture) * (between - near)) / near
  }

  /** The contrast that diffraction leaves of a pattern, in cycles per metre at the sensor: the overlap of two pupils, summed in strips. */
  contrast(frequency: number, wavelength: number): number {
    const { aperture, pupilRatio } = this.camera
    const working = aperture * (1 + this.magnification / pupilRatio)
    // The pupils are unit circles; the pattern shifts them by this much of their diameter.
    const shift = frequency * wavelength * working
    if (shift >= 1) return 0
    const strips = 4000
    let overlap = 0
    for (let i = 0; i < strips; i++) {
      const y = -1 + (2 * (i + 0.5)) / strips
      overlap += Math.max(0, 2 * Math.sqrt(1 - y * y) - 2 * shift) * (2 / strips)
    }
    return overlap / Math.PI
  }
}

export interface Lamp {
  readonly x: number
  readonly y: number
  /** Above the face of the original. */
  readonly z: number
  readonly aimX: number
  readonly aimY: number
  /** The full angle between the directions of half intensity. */
  readonly beam: number
  readonly intensity: number
}

/** The light of a lamp on a horizontal face: inverse square, cosine of incidence, and a cosine power for its beam. */
export function lightAt({ x, y, z, aimX, aimY, beam, intensity }: Lamp, px: number, py: number): number {
  const power = Math.log(0.5) / Math.log(Math.cos(beam / 2))
  const [dx, dy] = [px - x, py - y]
  const squared = dx * dx + dy * dy + z * z
  const distance = Math.sqrt(squared)
  const axis = Math.hypot(aimX - x, aimY - y, z)
  const off = (dx * (aimX - x) + dy * (aimY - y) + z * z) / (distance * axis)
  return off <= 0 ? 0 : (intensity * off ** power * (z / distance)) / squared
}

/** The spread of the light over a field, in stops, looked at every fortieth of it, or more coarsely. */
export function spread(lamps: readonly Lamp[], width: number, height: number, steps = 40): number {
  let [least, greatest] = [Number.POSITIVE_INFINITY, 0]
  for (let i = 0; i <= steps; i++)
    for (let j = 0; j <= steps; j++) {
      const [x, y] = [(i / steps - 0.5) * width, (j / steps - 0.5) * height]
      const sum = lamps.reduce((all, lamp) => all + lightAt(lamp, x, y), 0)
      least = Math.min(least, sum)
      greatest = Math.max(greatest, sum)
    }
  return Math.log2(greatest / least)
}

/**
 * How far out, at the lamps' height, the lens sees by reflection in the face from `from` to `to`, whose edges may be
 * tilted by up to `curl` either way: the ray from the pupil, turned at the face. The lens is above x = `lens`.
 */
export function seenByReflection(
  lens: number,
  pupilDistance: number,
  [from, to]: readonly [number, number],
  lampHeight: number,
  curl: number,
): number {
  let farthest = 0
  for (let i = 0; i <= 100; i++) {
    const x = from + ((to - from) * i) / 100
    const incidence = Math.atan2(x - lens, pupilDistance)
    for (const tilt of [-curl, 0, curl]) {
      const reflected = incidence + 2 * tilt
      // Turned below the horizon, the ray passes every lamp at that height.
      if (Math.abs(reflected) >= Math.PI / 2) return Number.POSITIVE_INFINITY
      farthest = Math.max(farthest, Math.abs(x + lampHeight * Math.tan(reflected)))
    }
  }
  return farthest
}

/**
 * How near to the middle of a lamp, at its height, the lens sees by reflection in a face of half sizes `half`, which may be
 * tilted by up to `curl` towards any side: each ray from the pupil, turned at the face as a vector. The lens is above the
 * middle.
 */
export function nearestReflection(
  pupilDistance: number,
  [halfWidth, halfHeight]: readonly [number, number],
  lamp: Pick<Lamp, 'x' | 'y' | 'z'>,
  curl: number,
): number {
  const azimuths = curl === 0 ? [0] : Array.from({ length: 8 }, (_, i) => (i * Math.PI) / 4)
  const tilted = (azimuth: number): readonly [number, number, number] => [
    Math.sin(curl) * Math.cos(azimuth),
    Math.sin(curl) * Math.sin(azimuth),
    Math.cos(curl),
  ]
  const normals = [[0, 0, 1] as const, ...azimuths.map(tilted)]
  const missAt = (x: number, y: number, [nx, ny, nz]: readonly [number, number, number]): number => {
    const along = x * nx + y * ny - pupilDistance * nz
    const [dx, dy, dz] = [x - 2 * along * nx, y - 2 * along * ny, -pupilDistance - 2 * along * nz]
    // Turned below the horizon, the ray passes every lamp at that height.
    if (dz <= 0) return Number.POSITIVE_INFINITY
    const far = lamp.z / dz
    return Math.hypot(x + dx * far - lamp.x, y + dy * far - lamp.y)
  }
  const clamp = (at: number, half: number): number => Math.min(half, Math.max(-half, at))
  let nearest = Number.POSITIVE_INFINITY
  for (const normal of normals) {
    let best = { x: 0, y: 0, miss: missAt(0, 0, normal) }
    // Ever closer about the point from which the ray passes nearest.
    for (let reach = 1; reach > 1e-5; reach /= 3) {
      const { x: middleX, y: middleY } = best
      for (let i = -6; i <= 6; i++)
        for (let j = -6; j <= 6; j++) {
          const x = clamp(middleX + (i / 6) * reach * halfWidth, halfWidth)
          const y = clamp(middleY + (j / 6) * reach * halfHeight, halfHeight)
          const miss = missAt(x, y, normal)
          if (miss < best.miss) best = { x, y, miss }
        }
    }
    nearest = Math.min(nearest, best.miss)
  }
  return nearest
}
