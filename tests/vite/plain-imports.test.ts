import { expect, test } from 'vitest'
import { withPlainImports } from '../../vite/plain-imports.ts'

test.each([
  ['await j(()=>import(`./a-1.js`).then(e=>e.t),[],import.meta.url)', 'await import(`./a-1.js`).then(e=>e.t)'],
  ['x?$(()=>import(`./a-1.js`),[],import.meta.url):0', 'x?import(`./a-1.js`):0'],
  [
    'let{A:e}=await j(async()=>{let{A:e}=await import(`./a-1.js`).then(e=>e.n);return{A:e}},[],import.meta.url);e()',
    'let{A:e}=await import(`./a-1.js`).then(e=>e.n);e()',
  ],
  // What has another form stays a call, without its list.
  [
    'j(async()=>{let e=await import(`./a-1.js`);return f(e)},[],import.meta.url)',
    'j(async()=>{let e=await import(`./a-1.js`);return f(e)})',
  ],
  ['f(()=>g(),[])', 'f(()=>g(),[])'],
])('an import is what a browser takes: %s', (code, plain) => {
  expect(withPlainImports(code)).toBe(plain)
})
