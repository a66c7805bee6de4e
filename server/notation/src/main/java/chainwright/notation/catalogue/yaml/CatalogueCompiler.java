package chainwright.notation.catalogue.yaml;

import chainwright.notation.catalogue.CatalogueEncoder;
import java.io.IOException;
import java.nio.file.Files;
import java.nio.file.Path;
import java.util.ArrayList;
import java.util.List;
import java.util.Map;
import java.util.TreeMap;
import java.util.stream.Stream;

/** The build's step from the catalogue's YAML to its compact form. */
public final class CatalogueCompiler {

  private CatalogueCompiler() {}

  /**
   * Compiles the catalogue.
   *
   * @param args the folder of the YAML files and the file to write
   * @throws IOException if a file cannot be read or written
   * @throws CatalogueException if a file is wrong
   */
  public static void main(String[] args) throws IOException {
    if (args.length != 2) {
      throw new IllegalArgumentException("a folder and a file are needed");
    }
    byte[] bytes = CatalogueEncoder.encode(CatalogueReader.read(texts(Path.of(args[0]))));
    Path target = Path.of(args[1]);
    Files.createDirectories(target.getParent());
    Files.write(target, bytes);
  }

  /**
   * Reads the YAML files under a folder.
   *
   * @param folder the folder
   * @return the text of each by its path from the folder, with {@code /} between its parts
   * @throws IOException if a file cannot be read
   */
  static Map<String, String> texts(Path folder) throws IOException {
    List<Path> files = new ArrayList<>();
    try (Stream<Path> walk = Files.walk(folder)) {
      walk.filter(file -> file.toString().endsWith(".yaml")).forEach(files::add);
    }
    Map<String, String> texts = new TreeMap<>();
    for (Path file : files) {
      texts.put(folder.relativize(file).toString().replace('\\', '/'), Files.readString(file));
    }
    return texts;
  }
}
