package tripline.harness.watch;

import java.io.IOException;
import java.io.OutputStream;
import java.nio.charset.Charset;
import java.util.List;

/**
 * A terminal that frames are drawn on: its alternate screen, so that what stood there before comes
 * back. A frame is one write of the lines that differ from the frame before; nothing is ever
 * cleared in between, so nothing flickers. Lines are as wide as the terminal. Sequences are ECMA-48
 * with the private modes that xterm set and everybody follows (alternate screen, cursor, wrapping).
 */
final class Screen implements AutoCloseable {
  private static final String ENTER = "\u001b[?1049h\u001b[?25l\u001b[?7l\u001b[2J";
  private static final String LEAVE = "\u001b[0m\u001b[?7h\u001b[?25h\u001b[?1049l";

  private final OutputStream out;
  private final Charset charset;
  private final Look.Colour colour;
  private List<Line> drawn = List.of();
  private boolean open;

  /**
   * @param out the terminal, unbuffered
   */
  Screen(OutputStream out, Charset charset, Look.Colour colour) {
    this.out = out;
    this.charset = charset;
    this.colour = colour;
  }

  /**
   * Draws a frame over the one before.
   *
   * @throws IOException if the terminal is gone
   */
  void draw(Frame frame) throws IOException {
    StringBuilder change = new StringBuilder();
    if (!open) {
      open = true;
      change.append(ENTER);
    }
    List<Line> lines = frame.lines();
    for (int row = 0; row < lines.size(); row++) {
      if (row >= drawn.size() || !lines.get(row).equals(drawn.get(row))) {
        change.append("\u001b[").append(row + 1).append(";1H");
        change.append(lines.get(row).drawn(colour));
      }
    }
    if (drawn.size() > lines.size()) {
      change.append("\u001b[").append(lines.size() + 1).append(";1H\u001b[J");
    }
    if (change.length() > 0) {
      write(change.toString());
    }
    drawn = lines;
  }

  /** Forgets what is drawn: the next frame is drawn whole. */
  void forget() {
    drawn = List.of();
  }

  private void write(String text) throws IOException {
    out.write(text.getBytes(charset));
    out.flush();
  }

  /** Gives the terminal back as it was. */
  @Override
  public void close() throws IOException {
    if (open) {
      open = false;
      write(LEAVE);
    }
  }
}
