/**
 * The result as plain records, one to one with the result file: component names are the file's keys
 * in camel case, absent figures are {@code null}. Built once at the end of an analysis; immutable.
 */
@NullMarked
package tripline.result;

import org.jspecify.annotations.NullMarked;
