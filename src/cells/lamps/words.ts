/** The words of the lamps that can be dragged. */
export const lampWords = {
  lamp: (number: number): string => `Lamp ${number}`,
  role: 'lamp that can be moved',
  label: (lamp: string, view: string, position: string): string =>
    `${lamp} in ${view}: ${position}. Arrow keys move it by 10 mm, with Shift by 100 mm.`,
  position: (lamp: string, position: string): string => `${lamp}: ${position}.`,
  putBack: 'Moved back.',
  cannotMove: (lamp: string): string => `${lamp} cannot be moved that way.`,
}
