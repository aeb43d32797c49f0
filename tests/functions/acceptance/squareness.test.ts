import { describe, expect, it } from 'vitest'
import { advice, call, MM, UM } from '../call.ts'

const DEGREE = Math.PI / 180

/** A point of a plane tilted by θ about its x axis, seen from the entrance pupil at distance D on the axis. */
const project = (x: number, y: number, tilt: number, distance: number): [number, number] => {
  const scale = 1 / (distance - y * Math.sin(tilt))
  return [x * scale, y * Math.cos(tilt) * scale]
}

describe('a tilted original', () => {
  it('has its near edge drawn longer by the keystone', () => {
    const [tilt, half, distance] = [1.7 * DEGREE, 0.35, 1.1]
    const near = project(0.2, half, tilt, distance)[0]
    const far = project(0.2, -half, tilt, distance)[0]
    expect(call('keystone', tilt, 2 * half, distance)).toBeCloseTo(near / far - 1, 12)
    expect(call('keystone', -tilt, 2 * half, distance)).toBeCloseTo(near / far - 1, 12)
  })

  it('may tilt by the allowance and no more', () => {
    const tilt = call('tilt_allowance', 12, 6000, 0.7, 1.1)
    expect(call('keystone', tilt, 0.7, 1.1) * 6000).toBeCloseTo(12, 9)
    expect(call('tilt_allowance', 8, 8000, 0.6, 1) / DEGREE).toBeCloseTo(0.0954, 4)
  })

  it('uses up depth between its edges', () => {
    expect(call('tilt_depth', 2 * DEGREE, 0.5)).toBeCloseTo(2 * 0.25 * Math.sin(2 * DEGREE), 12)
  })

  it('leaves its diagonals equal, so diagonal_skew does not see it, but sees a shear', () => {
    const [tilt, half, distance] = [3 * DEGREE, 0.3, 1]
    const corners = [
      project(-half, half, tilt, distance),
      project(half, half, tilt, distance),
      project(half, -half, tilt, distance),
      project(-half, -half, tilt, distance),
    ] as const
    const apart = (a: readonly [number, number], b: readonly [number, number]) => Math.hypot(a[0] - b[0], a[1] - b[1])
    expect(call('diagonal_skew', apart(corners[0], corners[2]), apart(corners[1], corners[3]), 0.6, 0.6)).toBeCloseTo(
      0,
      12,
    )
    const [w, h, skew] = [0.8, 0.5, 0.7 * DEGREE]
    const lean = [h * Math.sin(skew), h * Math.cos(skew)] as const
    expect(call('diagonal_skew', Math.hypot(w + lean[0], lean[1]), Math.hypot(w - lean[0], lean[1]), w, h)).toBeCloseTo(
      skew,
      12,
    )
  })
})

describe('the mirror', () => {
  it('shows the same tilt at its own plane and in the frame', () => {
    const [focal, m, p, pitch, offset] = [60 * MM, 0.2, 0.85, 4 * UM, 150]
    // On the mirror the offset is image/m, seen from f (1/m + 1/p).
    const expected = call('mirror_tilt', (offset * pitch) / m, focal * (1 / m + 1 / p))
    expect(call('mirror_tilt_pixels', offset, pitch, focal, m, p)).toBeCloseTo(expected, 12)
  })

  it('reflects a camera tilted by θ the distance times tan θ off its axis', () => {
    expect(call('mirror_tilt', 1.2 * Math.tan(0.4 * DEGREE), 1.2)).toBeCloseTo(0.4 * DEGREE, 12)
  })
})

describe('distortion', () => {
  it('bows an edge by the difference of its third-order shifts', () => {
    const [delta, w, h] = [0.012, 8000, 6000]
    const R2 = (w / 2) ** 2 + (h / 2) ** 2
    const shifted = (x: number, y: number) => y * (1 + (delta * (x * x + y * y)) / R2)
    expect(call('edge_bow', delta, w, h)).toBeCloseTo(shifted(w / 2, h / 2) - shifted(0, h / 2), 9)
    expect(call('distortion_shift', delta, Math.sqrt(R2))).toBeCloseTo(60, 9)
  })
})

describe('upright originals', () => {
  it('are met square on', () => {
    const place = call<{ height: number; horizontal: number }>('camera_for_lean', 1.4, 10 * DEGREE, 2)
    // The plane leans back by 10°: its upward direction is (sin 10°, cos 10°) away from the camera.
    const alongPlane = -place.horizontal * Math.sin(10 * DEGREE) + (place.height - 1.4) * Math.cos(10 * DEGREE)
    expect(alongPlane).toBeCloseTo(0, 12)
    expect(Math.hypot(place.horizontal, place.height - 1.4)).toBeCloseTo(2, 12)
    expect(advice('camera_for_lean', 0.5, -30 * DEGREE, 2)).toContain('floor')
  })

  it('are shaded by their frame as far as its depth reaches under the lamp', () => {
    expect(call('edge_shadow', 20 * MM, 30 * DEGREE)).toBeCloseTo(20 * MM * Math.sqrt(3), 12)
    expect(call('edge_shadow', 20 * MM, 90 * DEGREE)).toBeCloseTo(0, 12)
  })

  it('hang level as far as the bubble says', () => {
    expect(Math.tan(call('level_tilt', 0.3e-3, 3))).toBeCloseTo(0.9e-3, 12)
  })
})
