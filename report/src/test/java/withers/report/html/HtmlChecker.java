package withers.report.html;

import java.io.ByteArrayInputStream;
import java.io.File;
import java.io.InputStream;
import java.net.URL;
import java.net.URLClassLoader;
import java.nio.charset.StandardCharsets;
import java.nio.file.Files;
import java.nio.file.Path;
import java.util.ArrayList;
import java.util.Arrays;
import java.util.List;
import java.util.stream.Stream;

/**
 * The Nu HTML checker (nu.validator), in a class loader of its own: it needs an ICU4J of its own
 * age, which the build lays beside the classes, and the application reads character sets by a newer
 * one.
 */
final class HtmlChecker {

  private HtmlChecker() {}

  /** What the checker says about a page, warnings and style sheet included. */
  static String complaints(String page) throws Exception {
    Thread thread = Thread.currentThread();
    ClassLoader usual = thread.getContextClassLoader();
    try (URLClassLoader loader = new URLClassLoader(urls(), ClassLoader.getPlatformClassLoader())) {
      thread.setContextClassLoader(loader);
      return complaints(page, loader);
    } finally {
      thread.setContextClassLoader(usual);
    }
  }

  private static String complaints(String page, ClassLoader loader) throws Exception {
    Class<?> type = loader.loadClass("nu.validator.client.EmbeddedValidator");
    Class<?> format = loader.loadClass("nu.validator.client.EmbeddedValidator$OutputFormat");
    Object checker = type.getConstructor().newInstance();
    Object text =
        Arrays.stream(format.getEnumConstants())
            .filter(one -> one.toString().equals("TEXT"))
            .findFirst()
            .orElseThrow();
    type.getMethod("setOutputFormat", format).invoke(checker, text);
    InputStream bytes = new ByteArrayInputStream(page.getBytes(StandardCharsets.UTF_8));
    return (String) type.getMethod("validate", InputStream.class).invoke(checker, bytes);
  }

  private static URL[] urls() throws Exception {
    List<URL> urls = new ArrayList<>();
    Path target = Path.of(HtmlChecker.class.getResource("/").toURI()).getParent();
    try (Stream<Path> own = Files.list(target.resolve("html-checker"))) {
      for (Path jar : own.toList()) {
        urls.add(jar.toUri().toURL());
      }
    }
    for (String entry : System.getProperty("java.class.path").split(File.pathSeparator)) {
      if (entry.endsWith(".jar") && !entry.contains("icu4j")) {
        urls.add(Path.of(entry).toUri().toURL());
      }
    }
    return urls.toArray(URL[]::new);
  }
}
