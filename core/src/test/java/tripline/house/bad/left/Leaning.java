package tripline.house.bad.left;

import tripline.house.bad.right.OpenManager;

/** Leans on a neighbour it may not know, in a package that does not state its nullness. */
public record Leaning(OpenManager neighbour) {}
