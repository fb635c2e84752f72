/**
 * The last step: judgements and findings become one {@link tripline.result.Result} with the
 * decision of the whole.
 *
 * <p>Entry type: {@link tripline.verdict.Verdict}. Pure functions; safe from any thread; memory in
 * proportion to what the result holds.
 */
@NullMarked
package tripline.verdict;

import org.jspecify.annotations.NullMarked;
