import { readFileSync } from 'node:fs'
import { expect, test } from 'vitest'
import { SCHEMA_FILE, schemaText } from '../../../scripts/schema.ts'

test('the committed JSON Schema is what the document’s schema makes: else run npm run schema', () => {
  expect(readFileSync(SCHEMA_FILE, 'utf8')).toBe(schemaText())
})
