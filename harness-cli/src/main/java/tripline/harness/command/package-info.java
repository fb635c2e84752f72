/** One class per command. */
@org.jspecify.annotations.NullMarked
package tripline.harness.command;
