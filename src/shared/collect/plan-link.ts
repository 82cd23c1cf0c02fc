import type { Result } from '../model/result'
import type { Plan } from './plan'

/**
 * A plan as the fragment of a link, without '#' or any path: base64url of a version byte, a CRC-32
 * and deflated content. Nothing of it is ever sent to a server.
 */
export declare function encodePlanLink(plan: Plan): Result<string>

/**
 * Reads what `encodePlanLink` wrote.
 * @returns failures 'plan/empty', 'plan/cut', 'plan/altered', 'plan/newer', 'plan/too-large',
 *   'plan/invalid', each one sentence that says what to do
 */
export declare function decodePlanLink(fragment: string): Result<Plan>
