package tripline.link;

import java.util.Locale;
import org.jspecify.annotations.Nullable;

/** The messages of the link (SPEC §5, §6). */
public enum MessageType {
  IDENTITY(0x01),
  CHANNEL(0x02),
  STATUS(0x03),
  SAMPLES(0x04),
  EDGES(0x05),
  MARK(0x06),
  LOSS(0x07),
  ANSWER(0x08),
  STORED(0x09),
  PIECE(0x0a),
  HELLO(0x41),
  START(0x42),
  STOP(0x43),
  RATE(0x44),
  PLACE(0x45),
  TIME(0x46),
  LIST(0x47),
  FETCH(0x48),
  QUERY(0x49);

  private static final int COMMANDS = 0x40;
  private static final MessageType[] ALL = values();
  private static final @Nullable MessageType[] BY_CODE = new @Nullable MessageType[256];

  static {
    for (MessageType type : values()) {
      BY_CODE[type.code] = type;
    }
  }

  private final int code;
  private final String word;

  MessageType(int code) {
    this.code = code;
    this.word = name().toLowerCase(Locale.ROOT);
  }

  /** The type byte of its body. */
  public int code() {
    return code;
  }

  /** Its name in lines. */
  public String word() {
    return word;
  }

  Layout layout() {
    return switch (this) {
      case IDENTITY -> IdentityLayout.LAYOUT;
      case CHANNEL -> ChannelLayout.LAYOUT;
      case STATUS -> StatusLayout.LAYOUT;
      case SAMPLES -> SamplesLayout.LAYOUT;
      case EDGES -> EdgesLayout.LAYOUT;
      case MARK -> MarkLayout.LAYOUT;
      case LOSS -> LossLayout.LAYOUT;
      case ANSWER -> AnswerLayout.LAYOUT;
      case STORED -> StoredLayout.LAYOUT;
      case PIECE -> PieceLayout.LAYOUT;
      case HELLO -> HelloLayout.LAYOUT;
      case START -> StartLayout.LAYOUT;
      case RATE -> RateLayout.LAYOUT;
      case PLACE -> PlaceLayout.LAYOUT;
      case TIME -> TimeLayout.LAYOUT;
      case FETCH -> FetchLayout.LAYOUT;
      case STOP, LIST, QUERY -> Layout.EMPTY;
    };
  }

  /** The type of a code, or null for one this version does not know. */
  public static @Nullable MessageType of(int code) {
    return BY_CODE[code & 0xff];
  }

  /** The type of a name in lines, or null. */
  static @Nullable MessageType of(byte[] line, int from, int to) {
    for (MessageType type : ALL) {
      if (Ascii.equal(line, from, to, type.word)) {
        return type;
      }
    }
    return null;
  }

  /** Whether a code is that of a command; others go to the host. */
  static boolean isCommand(int code) {
    return (code & 0xff) >= COMMANDS;
  }
}
