package chainwright.app.cli;

import com.github.weisj.jsvg.SVGDocument;
import com.github.weisj.jsvg.parser.LoaderContext;
import com.github.weisj.jsvg.parser.SVGLoader;
import java.awt.Graphics2D;
import java.awt.RenderingHints;
import java.awt.image.BufferedImage;
import java.io.ByteArrayInputStream;
import java.io.ByteArrayOutputStream;
import java.io.IOException;
import java.nio.charset.StandardCharsets;
import javax.imageio.ImageIO;

/** Makes dots of a picture of lines. The first use loads fonts, which takes a while. */
final class PngPicture {

  /** How many dots a unit of the picture takes either way, so that print and slides stay sharp. */
  private static final double SCALE = 2;

  private PngPicture() {}

  /**
   * Draws a picture.
   *
   * @param svg the picture, as an SVG document of its own
   * @return the bytes of a PNG file
   * @throws IOException if this machine cannot draw, most likely because it has no fonts
   */
  static byte[] of(String svg) throws IOException {
    // No window is wanted, and many machines have none to give.
    System.setProperty("java.awt.headless", "true");
    try {
      return draw(svg);
    } catch (LinkageError | InternalError | NullPointerException e) {
      // What the runtime throws where it finds no fonts, or not the libraries that draw them.
      throw new IOException(
          "this machine cannot draw pictures of dots: Java found no fonts here; install some"
              + " (such as the package fonts-dejavu-core), or write svg",
          e);
    }
  }

  private static byte[] draw(String svg) throws IOException {
    SVGDocument document =
        new SVGLoader()
            .load(
                new ByteArrayInputStream(svg.getBytes(StandardCharsets.UTF_8)),
                null,
                LoaderContext.createDefault());
    if (document == null) {
      throw new IOException("the picture cannot be turned into dots; write svg");
    }
    int width = (int) Math.ceil(document.size().width * SCALE);
    int height = (int) Math.ceil(document.size().height * SCALE);
    BufferedImage image = new BufferedImage(width, height, BufferedImage.TYPE_INT_RGB);
    Graphics2D graphics = image.createGraphics();
    try {
      graphics.setRenderingHint(RenderingHints.KEY_ANTIALIASING, RenderingHints.VALUE_ANTIALIAS_ON);
      graphics.setRenderingHint(
          RenderingHints.KEY_TEXT_ANTIALIASING, RenderingHints.VALUE_TEXT_ANTIALIAS_ON);
      graphics.setRenderingHint(
          RenderingHints.KEY_STROKE_CONTROL, RenderingHints.VALUE_STROKE_PURE);
      graphics.scale(SCALE, SCALE);
      document.render(null, graphics);
    } finally {
      graphics.dispose();
    }
    ByteArrayOutputStream bytes = new ByteArrayOutputStream();
    ImageIO.setUseCache(false);
    if (!ImageIO.write(image, "png", bytes)) {
      throw new IOException("this Java writes no PNG; write svg");
    }
    return bytes.toByteArray();
  }
}
