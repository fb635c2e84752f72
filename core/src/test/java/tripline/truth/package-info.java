/**
 * A seeded physical model of an electric multi-turn valve actuator, the technician at its
 * handwheel, its motor, and the logger that records it: it knows the truth the product is measured
 * against.
 *
 * <p>Everything is a function of a seed: the same seed gives the same bytes on every machine
 * ({@code StrictMath}, own generator). Shares the vocabulary of {@code tripline.sample} and {@code
 * tripline.job} with the product and nothing else: no estimate is made here. Time is in seconds
 * from the begin of a recording, travel in handwheel turns.
 */
package tripline.truth;
