package withers.report.browser;

import java.io.IOException;
import java.nio.file.Files;
import java.nio.file.Path;
import java.util.List;
import java.util.stream.Stream;
import withers.report.browser.Browser.Screen;
import withers.report.cli.DemoPages;

/**
 * Takes pictures of the demo's overview and of one list, whole pages, on a phone and at a desk, in
 * light and in dark: for people to look at (DEVELOPERS.md, "Looking at pages").
 */
final class Screenshots {
  /** A list short enough to be looked at in one picture, with tasks of every band. */
  private static final String LIST = "nethersay-clinic";

  private final Browser browser;
  private final Path folder;

  private Screenshots(Browser browser, Path folder) {
    this.browser = browser;
    this.folder = folder;
  }

  /**
   * Takes them.
   *
   * @param args the folder to put them into
   */
  public static void main(String[] args) throws IOException {
    Path folder = Files.createDirectories(Path.of(args[0]));
    List<Path> pages = DemoPages.made(Files.createTempDirectory("withers-screenshots"));
    try (Browser browser = Browser.start(Files.createTempDirectory("withers-browser"))) {
      Screenshots shots = new Screenshots(browser, folder);
      for (Screen screen : Screen.ALL) {
        shots.take(page(pages, "overview.html"), "overview", screen);
        shots.take(page(pages, LIST + "/list.html"), "list", screen);
      }
      shots.takeSorted(page(pages, LIST + "/list.html"));
    }
    try (Stream<Path> all = Files.list(folder)) {
      all.sorted().forEach(System.out::println);
    }
  }

  private static Path page(List<Path> pages, String end) {
    return pages.stream().filter(page -> page.endsWith(end)).findFirst().orElseThrow();
  }

  private void take(Path page, String name, Screen screen) throws IOException {
    browser.use(screen);
    browser.open(page);
    write("%s-%s".formatted(name, screen.name()));
  }

  private void takeSorted(Path page) throws IOException {
    browser.use(Screen.ALL.get(0));
    browser.open(page);
    browser.find("select[name=mark] option[value=new]").click();
    browser.find("select[name=sort] option[value=animal]").click();
    write("list-sorted-" + Screen.ALL.get(0).name());
  }

  private void write(String name) throws IOException {
    Files.write(folder.resolve(name + ".png"), browser.picture());
  }
}
