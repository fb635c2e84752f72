package tripline.link;

/** Contact changes stamped by hardware (SPEC §5, 05). Reusable, as {@link SampleBlock} is. */
public final class EdgeBlock implements LinkMessage {
  private long number;
  private long stampMicros;
  private int fractionNs;
  private int edges;
  private final long[] gapsNs = new long[EdgesLayout.MOST_EDGES];
  private final byte[] contacts = new byte[EdgesLayout.MOST_EDGES];
  private final byte[] levels = new byte[EdgesLayout.MOST_EDGES];

  /** An empty block; {@link #begin} it before use. */
  public EdgeBlock() {}

  /**
   * Empties the block.
   *
   * @param number edges since start before the first one, modulo 2^32
   * @param stampMicros base time, whole microseconds
   * @param fractionNs nanoseconds to add, 0-999
   * @throws IllegalArgumentException if the fraction is outside its range
   */
  public EdgeBlock begin(long number, long stampMicros, int fractionNs) {
    this.number = number & 0xffff_ffffL;
    this.stampMicros = stampMicros;
    if (fractionNs < 0 || fractionNs > 999) {
      throw new IllegalArgumentException("edges: a fraction of " + fractionNs + " ns");
    }
    this.fractionNs = fractionNs;
    edges = 0;
    return this;
  }

  /**
   * Adds an edge.
   *
   * @param gapNs since the edge before (the first: since the base time), 32 bits
   * @param contact 0-63
   * @param level after the edge, 0-1
   * @return false if it does not fit any more: a new block is to begin
   */
  public boolean add(long gapNs, int contact, int level) {
    if (edges == EdgesLayout.MOST_EDGES || gapNs < 0 || gapNs > 0xffff_ffffL) {
      return false;
    }
    gapsNs[edges] = gapNs;
    contacts[edges] = (byte) (contact & EdgesLayout.CONTACT_BITS);
    levels[edges] = (byte) (level & 1);
    edges++;
    return true;
  }

  @Override
  public MessageType type() {
    return MessageType.EDGES;
  }

  @Override
  public int writeBody(byte[] body) {
    BodyWriter.clear(body, type());
    Le.put32(body, EdgesLayout.NUMBER, number);
    Le.put64(body, EdgesLayout.STAMP, stampMicros);
    Le.put16(body, EdgesLayout.FRACTION, fractionNs);
    Le.put8(body, EdgesLayout.COUNT, edges);
    int at = EdgesLayout.EDGES;
    for (int i = 0; i < edges; i++) {
      Le.put32(body, at, gapsNs[i]);
      Le.put8(body, at + EdgesLayout.EDGE_CONTACT, contacts[i] | (levels[i] << 7));
      at += EdgesLayout.EDGE_SIZE;
    }
    return BodyWriter.checked(type(), body, at);
  }

  /** Takes the edges of a body that a {@link LinkDecoder} handed on. */
  public EdgeBlock read(byte[] body) {
    begin(
        Le.u32(body, EdgesLayout.NUMBER),
        Le.i64(body, EdgesLayout.STAMP),
        Le.u16(body, EdgesLayout.FRACTION));
    int count = Le.u8(body, EdgesLayout.COUNT);
    for (int i = 0; i < count; i++) {
      int at = EdgesLayout.EDGES + i * EdgesLayout.EDGE_SIZE;
      int last = Le.u8(body, at + EdgesLayout.EDGE_CONTACT);
      add(Le.u32(body, at), last & EdgesLayout.CONTACT_BITS, last >> 7);
    }
    return this;
  }

  /** Edges since start before the first one, modulo 2^32. */
  public long number() {
    return number;
  }

  /** Base time, whole microseconds of the logger's clock. */
  public long stampMicros() {
    return stampMicros;
  }

  /** Nanoseconds to add to it. */
  public int fractionNs() {
    return fractionNs;
  }

  /** How many edges. */
  public int edges() {
    return edges;
  }

  /** Nanoseconds since the edge before. */
  public long gapNs(int edge) {
    return gapsNs[edge];
  }

  /** Contact that changed. */
  public int contact(int edge) {
    return contacts[edge];
  }

  /** Its level afterwards. */
  public int level(int edge) {
    return levels[edge];
  }
}
