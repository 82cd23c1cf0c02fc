import { plainText } from '../shared/format/parse-json'
import { fail, ok, type Result } from '../shared/model/result'
import { NAMES } from '../shared/words/en/names'

export const MAX_NAME_LENGTH = 40

/**
 * A name as it will be kept: trimmed, inner space single, no controls.
 * Codes: 'name/empty', 'name/long', 'name/taken'.
 */
export function checkName(name: string, taken: string[]): Result<string> {
  const kept = plainText(name.replace(/\s+/g, ' ')).trim()
  if (kept === '') return fail('name/empty', NAMES.empty)
  if (kept.length > MAX_NAME_LENGTH) {
    return fail('name/long', NAMES.tooLong(kept.length, MAX_NAME_LENGTH))
  }
  const same = taken.find((one) => one.toLowerCase() === kept.toLowerCase())
  if (same !== undefined) return fail('name/taken', NAMES.taken(same))
  return ok(kept)
}
