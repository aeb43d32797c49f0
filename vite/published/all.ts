/** What is run at build: every published value compared, and which of them check which function. */
export { FUNCTIONS } from '../../src/functions/index.ts'
export { checkedFunctions, publishedRows } from '../../src/functions/published/report.ts'
