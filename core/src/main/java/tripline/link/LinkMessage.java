package tripline.link;

/** A message of the link, of either direction (SPEC §5, §6). */
public sealed interface LinkMessage
    permits Identity,
        ChannelDescription,
        Status,
        SampleBlock,
        EdgeBlock,
        MarkMessage,
        LossMessage,
        Answer,
        Stored,
        Piece,
        Hello,
        Start,
        Stop,
        Rate,
        Place,
        Time,
        ListStored,
        Fetch,
        Query {
  /** Its type. */
  MessageType type();

  /**
   * Writes the canonical body with sequence 0 into a buffer of at least 512 bytes.
   *
   * @return its length
   * @throws IllegalArgumentException if a field is outside its range
   */
  int writeBody(byte[] body);

  /**
   * Reads a body that a {@link LinkDecoder} handed on. Allocates; samples and edges are read
   * without allocation by {@link SampleBlock#read} and {@link EdgeBlock#read}.
   */
  static LinkMessage read(MessageType type, byte[] body) {
    return switch (type) {
      case IDENTITY -> Identity.read(body);
      case CHANNEL -> ChannelDescription.read(body);
      case STATUS -> Status.read(body);
      case SAMPLES -> new SampleBlock().read(body);
      case EDGES -> new EdgeBlock().read(body);
      case MARK -> MarkMessage.read(body);
      case LOSS -> LossMessage.read(body);
      case ANSWER -> Answer.read(body);
      case STORED -> Stored.read(body);
      case PIECE -> Piece.read(body);
      case HELLO -> Hello.read(body);
      case START -> Start.read(body);
      case STOP -> new Stop();
      case RATE -> Rate.read(body);
      case PLACE -> Place.read(body);
      case TIME -> Time.read(body);
      case LIST -> new ListStored();
      case FETCH -> Fetch.read(body);
      case QUERY -> new Query();
    };
  }
}
