import { cpus } from 'node:os'
import { chain } from './chain.ts'
import { drag } from './drag.ts'
import { fan } from './fan.ts'
import { field } from './field.ts'
import { formulas } from './formulas.ts'
import { heap } from './measure.ts'
import { redraw } from './redraw.ts'
import { run } from './run.ts'
import { simulation } from './simulate.ts'
import { table } from './table.ts'

const rounded = (ratio: number): number => Number(ratio.toPrecision(4))

console.log(`Node ${process.version}, ${cpus().length} × ${cpus()[0]?.model}`)
const { mathjs_units, hyperformula, hand_written } = chain()
console.log(`  mathjs with units takes ${mathjs_units.toFixed(1)} times ours (wanted: at least 20)`)
console.log(`  hyperformula takes ${hyperformula.toFixed(1)} times ours (wanted: at least 2)`)
console.log(`  ours takes ${hand_written.toFixed(1)} times the loop (wanted: at most 15)`)
fan()
formulas()
const field_map = field()
redraw()
table()
run()
const drag_frame = drag()
const simulate = simulation()
console.log(`Memory in use at the end: ${heap().toFixed(0)} MB of heap`)
if (process.argv.includes('--json'))
  console.log(
    JSON.stringify({
      ratios: {
        mathjs_units: rounded(mathjs_units),
        hyperformula: rounded(hyperformula),
        hand_written: rounded(hand_written),
        field_map: rounded(field_map),
        drag_frame: rounded(drag_frame),
        simulate: rounded(simulate),
      },
    }),
  )
