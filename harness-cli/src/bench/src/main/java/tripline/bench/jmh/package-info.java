/**
 * The four ways through the program, each alone and in memory, measured with JMH.
 *
 * <p>One benchmark a way; {@code mvn -Pbench} runs them all. Inputs are made once, the same in every
 * run. Not thread-safe: one state a benchmark.
 */
@NullMarked
package tripline.bench.jmh;

import org.jspecify.annotations.NullMarked;
