/*
 * What a test file imports from "vitest", for tests that are bundled into one file: the same collecting and the same
 * matchers, without the workers and servers round them that take longer than the tests.
 */
import { chai, JestAsymmetricMatchers, JestChaiExpect, JestExtend } from "@vitest/expect";

chai.use(JestExtend);
chai.use(JestChaiExpect);
chai.use(JestAsymmetricMatchers);

export const { expect } = chai;
export { afterAll, afterEach, beforeAll, beforeEach, describe, it, test } from "@vitest/runner";
