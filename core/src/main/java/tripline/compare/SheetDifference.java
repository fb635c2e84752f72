package tripline.compare;

/**
 * Something the job sheets of two results want differently, as far as the results tell.
 *
 * @param what {@code target}, {@code tolerance}, {@code from}, {@code cam}, {@code role}, {@code
 *     contact} or {@code backoff}, {@code backoff-tolerance}
 * @param name of the cam, contact or end
 * @param before as the earlier sheet has it; empty where it has none
 * @param after as the later sheet has it; empty where it has none
 */
public record SheetDifference(String what, String name, String before, String after) {}
