export const NAMES_FILE: string
export function namesPage(): string
