package tripline.harness.report.record;

import com.openhtmltopdf.outputdevice.helper.BaseRendererBuilder.FontStyle;
import com.openhtmltopdf.pdfboxout.PdfRendererBuilder;
import com.openhtmltopdf.svgsupport.BatikSVGDrawer;
import com.openhtmltopdf.util.XRLog;
import java.io.IOException;
import java.io.InputStream;
import java.io.OutputStream;
import java.nio.file.Files;
import java.nio.file.Path;
import java.nio.file.StandardCopyOption;

/**
 * The record as PDF. Letters come from a bundled face (DejaVu Sans Condensed: Latin, Greek,
 * Cyrillic and more); one that it has not is printed as the mark �, never left out.
 */
final class RecordPdf {
  private static final String FACES = "/net/sf/jasperreports/fonts/dejavu/";

  private RecordPdf() {}

  static void write(String page, Path file) throws IOException {
    Path target = file.toAbsolutePath();
    Path partial = target.resolveSibling(target.getFileName() + ".partial");
    try {
      try (OutputStream out = Files.newOutputStream(partial)) {
        render(page, out);
      }
      Files.move(partial, target, StandardCopyOption.REPLACE_EXISTING);
    } finally {
      Files.deleteIfExists(partial);
    }
  }

  private static void render(String page, OutputStream out) throws IOException {
    XRLog.setLoggingEnabled(false);
    PdfRendererBuilder builder = new PdfRendererBuilder();
    face(builder, "DejaVuSansCondensed.ttf", "Record", 400);
    face(builder, "DejaVuSansCondensed-Bold.ttf", "Record", 700);
    face(builder, "DejaVuSansMono.ttf", "Mono", 400);
    builder.useReplacementText("\uFFFD");
    try (BatikSVGDrawer drawer = new BatikSVGDrawer()) {
      builder.useSVGDrawer(drawer);
      builder.withHtmlContent(page, null);
      builder.toStream(out);
      builder.run();
    }
  }

  private static void face(PdfRendererBuilder builder, String file, String family, int weight) {
    builder.useFont(() -> open(file), family, weight, FontStyle.NORMAL, true);
  }

  private static InputStream open(String file) {
    InputStream in = RecordPdf.class.getResourceAsStream(FACES + file);
    if (in == null) {
      throw new IllegalStateException(file + " is not on the class path");
    }
    return in;
  }
}
