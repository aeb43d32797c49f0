import type { Point, Size } from './area-shapes.ts'

/** What of a picture is seen: its top left corner, and how large one of its pixels is on the screen. */
export interface ViewWindow {
  readonly x: number
  readonly y: number
  readonly scale: number
}

const LARGEST = 32

/** The whole picture. */
export function fitted(picture: Size, screen: Size): ViewWindow {
  const scale = Math.min(screen.width / picture.width, screen.height / picture.height)
  return within({ x: 0, y: 0, scale }, picture, screen)
}

/** Zoomed so that the place under a point of the screen stays there. */
export function zoomed(view: ViewWindow, to: number, at: Point, picture: Size, screen: Size): ViewWindow {
  const least = Math.min(1, fitted(picture, screen).scale)
  const scale = Math.min(Math.max(to, least), LARGEST)
  const [x, y] = toPicture(view, at)
  return within({ scale, x: x - at[0] / scale, y: y - at[1] / scale }, picture, screen)
}

/** Moved by a number of CSS pixels. */
export const panned = (view: ViewWindow, dx: number, dy: number, picture: Size, screen: Size): ViewWindow =>
  within({ ...view, x: view.x - dx / view.scale, y: view.y - dy / view.scale }, picture, screen)

/** A picture smaller than the screen is centred, a larger one fills it. */
function within({ x, y, scale }: ViewWindow, picture: Size, screen: Size): ViewWindow {
  const side = (at: number, size: number, seen: number): number =>
    seen >= size ? (size - seen) / 2 : Math.min(Math.max(at, 0), size - seen)
  return {
    x: side(x, picture.width, screen.width / scale),
    y: side(y, picture.height, screen.height / scale),
    scale,
  }
}

/** From a place on the screen to the pixel of the picture shown there. */
export const toPicture = ({ x, y, scale }: ViewWindow, [u, v]: Point): Point => [x + u / scale, y + v / scale]
/** From a pixel of the picture to where it is shown on the screen. */
export const toScreen = ({ x, y, scale }: ViewWindow, [u, v]: Point): Point => [(u - x) * scale, (v - y) * scale]
