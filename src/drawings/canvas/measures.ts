/** Units of the numbers a drawing computes with. Inputs are coherent SI; positions on the canvas are CSS pixels. */
export type Metres = number
export type Radians = number
export type Pixels = number
export type Stops = number
