import { install } from './install.mjs'

install()
const { register } = await import('tsx/esm/api')
register()
await import('../src/cli/main.ts')
