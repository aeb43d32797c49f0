export { PX_PER_MM, type Scale } from './scale.ts'
export { drawSetUp, type SetUpOptions } from './set-up.ts'
export type { LengthUnit, SetUpInputs } from './set-up-inputs.ts'
export { type Drawing, type Node, toSvgText } from './tree.ts'
