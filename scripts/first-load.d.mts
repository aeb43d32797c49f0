export function gzipped(path: string): number
