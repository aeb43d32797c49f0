import { join } from 'node:path'
import { setTimeout as pause } from 'node:timers/promises'

const SIZES = [
  [1024, 1366],
  [390, 844],
]
const FACES = [
  ['shelf', ''],
  ['fill', '#new/flat-sheet'],
  ['stand', '#new/flat-sheet/stand'],
  ['build', '#new/flat-sheet/build'],
  ['lamps', '#new/two-lamps'],
  ['run', '#new/collection-run'],
]
/** Pictures are for a person to look at: this is long enough for drawings and suggestions. */
const REST_MS = 5000

/** A picture of each face in each size of window, named by engine, width and face. */
export async function shoot(engine, site, folder) {
  const window = await engine.open()
  try {
    for (const [width, height] of SIZES) {
      await window.resize(width, height)
      for (const [face, path] of FACES) {
        await window.go('about:blank')
        await window.go(site + path)
        await pause(REST_MS)
        await window.screenshot(join(folder, `${engine.name}-${width}-${face}.png`))
      }
    }
  } finally {
    await window.close()
  }
}
