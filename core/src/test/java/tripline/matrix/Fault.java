package tripline.matrix;

/** A kind of fault: the code that must name it, and how to make seeded specimens of it. */
record Fault(String code, Maker maker) {
  /** Makes the specimen of a seed. */
  interface Maker {
    Specimen make(Setup setup);
  }
}
