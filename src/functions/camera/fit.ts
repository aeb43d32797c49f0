/** The largest magnification at which width × height, with a border all around, fits the sensor (lengths in metres). */
export function fitMagnification(
  width: number,
  height: number,
  sensorWidth: number,
  sensorHeight: number,
  border: number,
  turn: boolean,
): number {
  const w = width + 2 * border
  const h = height + 2 * border
  const asItLies = Math.min(sensorWidth / w, sensorHeight / h)
  return turn ? Math.max(asItLies, Math.min(sensorWidth / h, sensorHeight / w)) : asItLies
}
