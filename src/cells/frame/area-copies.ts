import type { Frame } from '../../worksheet/index.ts'
import type { FrameArea, Size } from './area-shapes.ts'

/** The areas of a frame for a picture of another size: they lie at the same shares of its width and height. */
export function copiedAreas(
  { areas = [], picture }: Pick<Frame, 'areas' | 'picture'>,
  size: Size | undefined,
): FrameArea[] {
  const from = picture?.pixels
  const [across, down] = from && size ? [size.width / from.width, size.height / from.height] : [1, 1]
  const point = ([x, y]: readonly number[]): number[] => [(x as number) * across, (y as number) * down]
  const box = ([x, y, w, h]: readonly number[]): number[] => [
    ...point([x as number, y as number]),
    ...point([w as number, h as number]),
  ]
  return areas.map((area) => ({
    ...area,
    ...(area.box ? { box: box(area.box) } : {}),
    ...(area.from ? { from: point(area.from) } : {}),
    ...(area.to ? { to: point(area.to) } : {}),
    ...(area.corners ? { corners: area.corners.map(point) } : {}),
    ...(area.outline ? { outline: area.outline.map(point) } : {}),
    ...(area.patches ? { patches: area.patches.map((patch) => ({ ...patch, box: box(patch.box) })) } : {}),
  }))
}
