/**
 * The recording cases of {@code recordings/}: what was done to a fictional waterworks' actuators,
 * by the model that knows the truth. {@link tripline.cases.WriteRecordings} writes them; the same
 * seeds give the same bytes.
 */
package tripline.cases;
