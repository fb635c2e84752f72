package tripline.link;

import java.io.BufferedInputStream;
import java.io.BufferedOutputStream;
import java.io.DataInputStream;
import java.io.IOException;
import java.io.OutputStream;
import java.nio.file.Files;
import java.nio.file.Path;
import java.util.ArrayList;
import java.util.List;
import java.util.stream.Stream;

/** The codec in C of protocol-spec/c, compiled and driven through its check program. */
final class SecondCodec implements AutoCloseable {
  /** A message as the C decoder gave it, and as the C encoder wrote it anew. */
  static final class Message {
    private final int verdict;
    private final byte[] body;
    private final byte[] frame;
    private final byte[] line;

    private Message(int verdict, byte[] body, byte[] frame, byte[] line) {
      this.verdict = verdict;
      this.body = body;
      this.frame = frame;
      this.line = line;
    }

    boolean handedOn() {
      return verdict == 0;
    }

    byte[] body() {
      return body;
    }

    byte[] frame() {
      return frame;
    }

    byte[] line() {
      return line;
    }
  }

  private final Process process;
  private final OutputStream into;
  private final DataInputStream from;

  SecondCodec(Path program) throws IOException {
    process =
        new ProcessBuilder(program.toString())
            .redirectError(ProcessBuilder.Redirect.INHERIT)
            .start();
    into = new BufferedOutputStream(process.getOutputStream(), 1 << 16);
    from = new DataInputStream(new BufferedInputStream(process.getInputStream(), 1 << 16));
  }

  /** Compiles it as firmware authors are told to, warnings being errors. */
  static Path compile(Path folder) throws IOException, InterruptedException {
    Path program = folder.resolve("check");
    List<String> command =
        new ArrayList<>(List.of("gcc", "-std=c99", "-pedantic", "-Wall", "-Wextra", "-Wshadow"));
    command.addAll(List.of("-Wconversion", "-Werror", "-O2", "-o", program.toString()));
    try (Stream<Path> sources = Files.list(VectorFiles.SPEC.resolve("c"))) {
      sources.map(Path::toString).filter(f -> f.endsWith(".c")).sorted().forEach(command::add);
    }
    int exit = new ProcessBuilder(command).inheritIO().start().waitFor();
    if (exit != 0) {
      throw new IOException("gcc ended with " + exit);
    }
    return program;
  }

  /** Sends a stream; safe to call while another thread reads. */
  void send(byte[] stream, int length, int chunk) throws IOException {
    byte[] head = new byte[8];
    Le.put32(head, 0, length);
    Le.put32(head, 4, chunk);
    into.write(head);
    into.write(stream, 0, length);
    into.flush();
  }

  /** The next message of the present stream, or null at its end: then {@link #counters}. */
  Message next() throws IOException {
    if (from.readByte() == 'C') {
      return null;
    }
    int verdict = from.readUnsignedByte();
    byte[] body = bytes();
    boolean handedOn = verdict == 0;
    return new Message(
        verdict, body, handedOn ? bytes() : new byte[0], handedOn ? bytes() : new byte[0]);
  }

  /** What the C decoder counted, after {@link #next} gave null. */
  LinkCounters counters() throws IOException {
    long[] c = new long[12];
    for (int i = 0; i < c.length; i++) {
      c[i] = Long.reverseBytes(from.readLong());
    }
    return new LinkCounters(
        c[0], c[1], c[2], c[3], c[4], c[5], c[6], c[7], c[8], c[9], c[10], c[11]);
  }

  private byte[] bytes() throws IOException {
    int length = Short.toUnsignedInt(Short.reverseBytes(from.readShort()));
    byte[] all = new byte[length];
    from.readFully(all);
    return all;
  }

  @Override
  public void close() throws IOException {
    into.close();
    from.close();
    process.destroy();
  }
}
