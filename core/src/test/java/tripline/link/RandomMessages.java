package tripline.link;

import java.util.List;
import java.util.Random;

/** Messages of every type with fields anywhere in their ranges, from a seed. */
final class RandomMessages {
  private static final String[] TEXTS = {
    "", "k1", "turn", "späť", "\"", "\\", "a b=c ~00000000", "✓", "🚰 x", "stop felt", "#,/+:-"
  };

  private static final List<MessageType> TYPES = List.of(MessageType.values());

  private final Random random;
  private final SampleBlock samples = new SampleBlock();
  private final EdgeBlock edges = new EdgeBlock();

  RandomMessages(long seed) {
    random = new Random(seed);
  }

  LinkMessage next() {
    return next(TYPES.get(random.nextInt(TYPES.size())));
  }

  LinkMessage next(MessageType type) {
    return switch (type) {
      case IDENTITY ->
          new Identity(
              1 + random.nextInt(255),
              u8(),
              32 + random.nextInt(22),
              random.nextInt(65),
              random.nextInt(2),
              1 + random.nextInt(3),
              64 + random.nextInt(449),
              u32(),
              u32(),
              u32(),
              u32(),
              text(),
              text(),
              text());
      case CHANNEL ->
          new ChannelDescription(
              u8(),
              random.nextInt(64),
              random.nextInt(2),
              u8(),
              (int) u32() | 1,
              Math.max(1, u32()),
              u32(),
              u32(),
              u32(),
              "n" + text(),
              text());
      case STATUS ->
          new Status(
              u8(),
              u8(),
              random.nextInt(1001),
              time(),
              time(),
              u32(),
              u32(),
              u32(),
              u32(),
              u32(),
              u32(),
              u32());
      case SAMPLES -> samples();
      case EDGES -> edges();
      case MARK -> new MarkMessage(u8(), u8(), random.nextInt(65536), time(), text());
      case LOSS -> new LossMessage(u8(), u8(), Math.max(1, u32()), u32(), time(), time());
      case ANSWER -> new Answer(u8(), u8(), random.nextInt(65536), u32());
      case STORED ->
          new Stored(
              random.nextInt(65536),
              1 + random.nextInt(65535),
              u32(),
              u32(),
              u32(),
              u32(),
              time(),
              time(),
              text());
      case PIECE -> {
        byte[] data = new byte[1 + random.nextInt(480)];
        random.nextBytes(data);
        yield new Piece(u32(), u32(), data);
      }
      case HELLO -> new Hello(1 + random.nextInt(255), u8(), u8());
      case START -> new Start(u32(), random.nextInt(1001));
      case STOP -> new Stop();
      case RATE -> new Rate(Math.max(1, u32()));
      case PLACE -> new Place(u8(), text());
      case TIME -> new Time(Math.max(1, time()));
      case LIST -> new ListStored();
      case FETCH -> new Fetch(u32(), u32(), u32());
      case QUERY -> new Query();
    };
  }

  /** A block like those of a running logger: small steps, contacts that seldom change. */
  SampleBlock typical(int sequenceOfBlock, int rows) {
    samples.begin((long) sequenceOfBlock * rows, sequenceOfBlock * 1000L * rows, 1_000_000, 0xffff);
    int count = random.nextInt(1 << 20);
    long levels = random.nextInt(1 << 16);
    for (int i = 0; i < rows; i++) {
      count += random.nextInt(9);
      levels ^= random.nextInt(100) == 0 ? 1L << random.nextInt(16) : 0;
      samples.add(count, levels, 0);
    }
    return samples;
  }

  /** The same block object at every call. */
  private SampleBlock samples() {
    long period = random.nextInt(3) == 0 ? 0 : Math.max(1, u32());
    samples.begin(u32(), time(), period, random.nextLong() >>> random.nextInt(64));
    int rows = 1 + random.nextInt(random.nextInt(8) == 0 ? 470 : 40);
    int stepBits = 1 + random.nextInt(31);
    int levelBits = random.nextInt(65);
    long levels = random.nextLong();
    int count = (int) u32();
    boolean readings = random.nextInt(6) != 0;
    for (int i = 0; i < rows; i++) {
      count += random.nextInt() >> (32 - stepBits);
      boolean changes = levelBits > 0 && random.nextInt(5) == 0;
      levels ^= changes ? random.nextLong() >>> (64 - levelBits) : 0;
      long gap = random.nextInt(50) == 0 ? u32() : random.nextInt(2000);
      boolean reading = readings && random.nextInt(7) != 0;
      if (!(reading ? samples.add(count, levels, gap) : samples.addWithoutReading(levels, gap))) {
        break;
      }
    }
    return samples;
  }

  private EdgeBlock edges() {
    edges.begin(u32(), time(), random.nextInt(1000));
    int count = 1 + random.nextInt(96);
    for (int i = 0; i < count; i++) {
      edges.add(random.nextInt(4) == 0 ? 0 : u32(), random.nextInt(64), random.nextInt(2));
    }
    return edges;
  }

  private int u8() {
    return random.nextInt(3) == 0 ? random.nextInt(256) : random.nextInt(6);
  }

  private long u32() {
    return (random.nextInt() & 0xffff_ffffL) >>> random.nextInt(32);
  }

  private long time() {
    return (random.nextLong() & Field.MOST_STAMP) >>> random.nextInt(53);
  }

  private String text() {
    return TEXTS[random.nextInt(TEXTS.length)];
  }
}
