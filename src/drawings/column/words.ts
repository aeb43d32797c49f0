/** The texts in and below a drawing of the column. */
export const COLUMN_WORDS = {
  reach: 'The reach of the column',
  heightUnknown: 'neither the height on the column nor the distance from original to sensor is known.',

  reaches: (height: string) => [`reaches ${height}`, height],
  toSpare: (distance: string) => [`${distance} to spare`, distance],
  tooShort: (distance: string) => [`${distance} too short`, distance],

  introduction: (scale: string) => `The column and the camera at ${scale}, with a scale of heights above the board.`,
  reachAndSpare: (reach: string, spare: string) => `The column reaches ${reach}, so ${spare} is to spare.`,
  reachTooShort: (reach: string, missing: string) => `The column reaches ${reach}, which is ${missing} too short.`,
  notToSize: 'Camera, column and board are placed to scale; their own sizes are schematic.',
  reachOnly: (reach: string) => `The column reaches ${reach}.`,
}
