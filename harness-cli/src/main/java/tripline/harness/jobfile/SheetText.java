package tripline.harness.jobfile;

import java.io.IOException;
import java.io.InputStream;
import java.nio.ByteBuffer;
import java.nio.CharBuffer;
import java.nio.charset.CharsetDecoder;
import java.nio.charset.CoderResult;
import java.nio.charset.CodingErrorAction;
import java.nio.charset.StandardCharsets;
import java.nio.file.AccessDeniedException;
import java.nio.file.Files;
import java.nio.file.NoSuchFileException;
import java.nio.file.Path;
import java.security.MessageDigest;
import java.security.NoSuchAlgorithmException;
import java.util.HexFormat;
import java.util.List;
import java.util.Locale;
import org.tomlj.Toml;
import org.tomlj.TomlParseResult;
import org.tomlj.TomlVersion;
import tripline.capture.CaptureFormat;
import tripline.csv.CsvMetadata;
import tripline.harness.failure.InputFailure;

/**
 * The text of a job sheet file.
 *
 * @param text without a byte order mark
 * @param sha256 digest of the file's bytes, lower-case hex
 */
record SheetText(String text, String sha256) {
  /** A sheet of a thousand contacts is smaller; a recording given by mistake is larger. */
  static final int MOST_BYTES = 1 << 20;

  /** By so many bytes a recording or a result is known. */
  private static final int HEAD_BYTES = 100;

  /** A text that lies in memory. */
  static SheetText of(String text) {
    return new SheetText(text, sha256(text.getBytes(StandardCharsets.UTF_8)));
  }

  /** Reads a file, strictly as UTF-8. */
  static SheetText read(Path path) {
    byte[] bytes = bytes(path);
    CharsetDecoder decoder =
        StandardCharsets.UTF_8
            .newDecoder()
            .onMalformedInput(CodingErrorAction.REPORT)
            .onUnmappableCharacter(CodingErrorAction.REPORT);
    ByteBuffer in = ByteBuffer.wrap(bytes);
    CharBuffer out = CharBuffer.allocate(bytes.length + 1);
    CoderResult result = decoder.decode(in, out, true);
    String text = out.flip().toString();
    if (text.startsWith("\uFEFF")) {
      text = text.substring(1);
    }
    if (result.isError()) {
      int lineStart = text.lastIndexOf('\n') + 1;
      throw new InputFailure(
          path.toString(),
          text.chars().filter(c -> c == '\n').count() + 1,
          text.codePointCount(lineStart, text.length()) + 1L,
          "byte 0x%02x is not UTF-8, expected a text file in UTF-8"
              .formatted(in.get(in.position())));
    }
    return new SheetText(text, sha256(bytes));
  }

  private static byte[] bytes(Path path) {
    String file = path.toString();
    if (Files.isDirectory(path)) {
      throw new InputFailure(file, "is a folder, expected a job sheet");
    }
    try (InputStream in = Files.newInputStream(path)) {
      byte[] bytes = in.readNBytes(MOST_BYTES + 1);
      refuseMistaken(file, bytes);
      if (bytes.length > MOST_BYTES) {
        throw new InputFailure(
            file, "is larger than %d KiB, expected a job sheet".formatted(MOST_BYTES / 1024));
      }
      return bytes;
    } catch (NoSuchFileException e) {
      throw new InputFailure(file, "no such file, expected a job sheet");
    } catch (AccessDeniedException e) {
      throw new InputFailure(file, "may not be read, expected a readable job sheet");
    } catch (IOException e) {
      throw new InputFailure(file, "cannot be read: " + e.getMessage());
    }
  }

  /** What is given where the sheet belongs is named, and not read as one. */
  private static void refuseMistaken(String file, byte[] bytes) {
    String head =
        new String(bytes, 0, Math.min(HEAD_BYTES, bytes.length), StandardCharsets.UTF_8)
            .replace("\uFEFF", "")
            .stripLeading();
    if (CaptureFormat.isCapture(bytes, bytes.length) || head.startsWith("# " + CsvMetadata.KEY)) {
      throw new InputFailure(file, "is a recording, expected a job sheet: the sheet stands first");
    }
    if (head.startsWith("{")) {
      throw new InputFailure(
          file, "is JSON, as a result is, expected a job sheet in TOML: the sheet stands first");
    }
  }

  private static String sha256(byte[] bytes) {
    try {
      return HexFormat.of().formatHex(MessageDigest.getInstance("SHA-256").digest(bytes));
    } catch (NoSuchAlgorithmException e) {
      throw new IllegalStateException("every Java platform has SHA-256", e);
    }
  }

  /** The sheet's tables; syntax errors are thrown alone, for nothing after one can be trusted. */
  TomlParseResult toml(String file) {
    TomlParseResult toml = Toml.parse(text, TomlVersion.V1_1_0);
    if (toml.hasErrors()) {
      List<SheetNote> errors =
          toml.errors().stream()
              .map(e -> new SheetNote(e.position().line(), e.position().column(), message(e)))
              .toList();
      throw JobFile.failure(file, errors);
    }
    return toml;
  }

  private static String message(Throwable error) {
    String message = String.valueOf(error.getMessage()).replaceAll("\\R\\s*", " ");
    return "not TOML: " + message.substring(0, 1).toLowerCase(Locale.ROOT) + message.substring(1);
  }
}
