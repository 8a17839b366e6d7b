package withers.report.browser;

import java.io.IOException;
import java.io.InputStream;
import java.io.UncheckedIOException;
import java.nio.charset.StandardCharsets;
import java.nio.file.Files;
import java.nio.file.Path;
import java.time.Duration;
import java.util.List;
import java.util.Map;
import java.util.Objects;
import java.util.function.BooleanSupplier;
import java.util.logging.Level;
import java.util.logging.Logger;
import java.util.regex.Matcher;
import java.util.regex.Pattern;
import java.util.stream.Stream;
import org.openqa.selenium.By;
import org.openqa.selenium.OutputType;
import org.openqa.selenium.WebElement;
import org.openqa.selenium.chrome.ChromeDriver;
import org.openqa.selenium.chrome.ChromeDriverService;
import org.openqa.selenium.chrome.ChromeOptions;
import org.openqa.selenium.logging.LogType;
import org.openqa.selenium.logging.LoggingPreferences;
import org.openqa.selenium.support.ui.WebDriverWait;

/**
 * A Chromium without a window, driven by Selenium, that shows pages as files. Where there is none,
 * {@link #isHere} says so; with the environment variable {@value #REQUIRED} set, as in CI, starting
 * it fails instead.
 */
final class Browser implements AutoCloseable {
  static final String REQUIRED = "WITHERS_BROWSER_REQUIRED";

  private static final List<Path> BROWSERS =
      Stream.of("/usr/bin/chromium", "/usr/bin/chromium-browser", "/usr/bin/google-chrome")
          .map(Path::of)
          .toList();
  private static final List<Path> DRIVERS =
      Stream.of("/usr/bin/chromedriver", "/usr/lib/chromium-browser/chromedriver")
          .map(Path::of)
          .toList();

  private static final Pattern REQUESTED =
      Pattern.compile("\"method\":\"Network.requestWillBeSent\".*?\"url\":\"([^\"]*)\"");

  /** Its warnings are about features that no test uses. */
  private static final Logger SELENIUM = Logger.getLogger("org.openqa.selenium");

  private final ChromeDriver driver;

  private Browser(ChromeDriver driver) {
    this.driver = driver;
  }

  /** Whether there is one, or has to be. */
  static boolean isHere() {
    return isRequired()
        || (BROWSERS.stream().anyMatch(Files::isExecutable)
            && DRIVERS.stream().anyMatch(Files::isExecutable));
  }

  private static boolean isRequired() {
    return System.getenv(REQUIRED) != null;
  }

  /**
   * Starts one.
   *
   * @param profile an empty folder
   */
  static Browser start(Path profile) {
    SELENIUM.setLevel(Level.SEVERE);
    LoggingPreferences logs = new LoggingPreferences();
    logs.enable(LogType.PERFORMANCE, Level.ALL);
    logs.enable(LogType.BROWSER, Level.ALL);
    ChromeOptions options = new ChromeOptions();
    options.setBinary(first(BROWSERS, "Chromium").toFile());
    options.setCapability("goog:loggingPrefs", logs);
    options.addArguments(
        "--headless",
        "--no-sandbox", // tests may run as root, where the sandbox can't
        "--disable-gpu",
        "--disable-dev-shm-usage",
        "--disable-quic",
        "--no-first-run",
        "--disable-background-networking",
        "--disable-component-update",
        "--disable-sync",
        "--hide-scrollbars",
        "--lang=en-GB",
        "--user-data-dir=" + profile);
    ChromeDriverService service =
        new ChromeDriverService.Builder()
            .usingDriverExecutable(first(DRIVERS, "chromedriver").toFile())
            .build();
    return new Browser(new ChromeDriver(service, options));
  }

  private static Path first(List<Path> places, String what) {
    return places.stream()
        .filter(Files::isExecutable)
        .findFirst()
        .orElseThrow(
            () ->
                new IllegalStateException(
                    "Expected %s in one of %s, but found none: install it"
                        .formatted(what, places)));
  }

  /** How a reader's screen is, in CSS pixels. */
  record Screen(int width, int height, boolean isDark) {
    /** A phone and a desk, each in light and in dark. */
    static final List<Screen> ALL =
        List.of(
            new Screen(390, 844, false),
            new Screen(1280, 900, false),
            new Screen(390, 844, true),
            new Screen(1280, 900, true));

    /** As a file is called. */
    String name() {
      return "%d-%s".formatted(width, isDark ? "dark" : "light");
    }
  }

  /** Shows pages on such a screen from now on. */
  void use(Screen screen) {
    command(
        "Emulation.setDeviceMetricsOverride",
        Map.of(
            "width",
            screen.width(),
            "height",
            screen.height(),
            "deviceScaleFactor",
            1,
            "mobile",
            false));
    media("", screen.isDark() ? "dark" : "light");
  }

  /** Shows pages as they are printed from now on. */
  void print() {
    media("print", "light");
  }

  private void media(String media, String scheme) {
    Map<String, String> feature = Map.of("name", "prefers-color-scheme", "value", scheme);
    command("Emulation.setEmulatedMedia", Map.of("media", media, "features", List.of(feature)));
  }

  private void command(String name, Map<String, Object> parameters) {
    driver.executeCdpCommand(name, parameters);
  }

  void open(Path page) {
    driver.get(page.toUri().toString());
  }

  /** The first element that a selector of CSS finds. */
  WebElement find(String selector) {
    return driver.findElement(By.cssSelector(selector));
  }

  WebElement focused() {
    return driver.switchTo().activeElement();
  }

  /** Waits until something holds, ten seconds at most. */
  void await(BooleanSupplier until) {
    new WebDriverWait(driver, Duration.ofSeconds(10)).until(any -> until.getAsBoolean());
  }

  /**
   * The texts of all elements that are to be seen and that a selector of CSS finds; asked together,
   * since each question to the browser takes some milliseconds.
   */
  List<String> seen(String selector) {
    Object texts =
        driver.executeScript(
            """
            const isSeen = (one) =>
              one.checkVisibility({ visibilityProperty: true, opacityProperty: true }) &&
              one.getClientRects().length > 0;
            return [...document.querySelectorAll(arguments[0])]
              .filter(isSeen).map((one) => one.innerText.trim());
            """,
            selector);
    return ((List<?>) Objects.requireNonNull(texts)).stream().map(String::valueOf).toList();
  }

  /** What a script answers. */
  Object ask(String script) {
    return driver.executeScript(script);
  }

  long number(String script) {
    return ((Number) Objects.requireNonNull(ask(script))).longValue();
  }

  /**
   * What axe-core finds wrong with the page, as it stands: one line for each rule and place. WCAG
   * 2.2 as far as level AA, and its best practices.
   */
  List<String> violations() {
    driver.executeScript(resource("/axe.min.js"));
    Object found =
        driver.executeAsyncScript(
            """
            const done = arguments[arguments.length - 1];
            const tags = ["wcag2a", "wcag2aa", "wcag21a", "wcag21aa", "wcag22aa", "best-practice"];
            axe.run(document, { preload: false, runOnly: { type: "tag", values: tags }, resultTypes: ["violations"] })
              .then((all) => done(all.violations.flatMap((one) => one.nodes.map((node) =>
                `${one.id}: ${node.target.join(" ")}: ${node.failureSummary.replace(/\\s+/g, " ")}`))))
              .catch((trouble) => done(["axe: " + trouble]));
            """);
    return ((List<?>) Objects.requireNonNull(found)).stream().map(String::valueOf).toList();
  }

  /** All addresses that pages asked for since the last time; the browser's own pages left out. */
  List<String> requested() {
    return driver.manage().logs().get(LogType.PERFORMANCE).getAll().stream()
        .map(entry -> REQUESTED.matcher(entry.getMessage()))
        .filter(Matcher::find)
        .map(match -> match.group(1))
        .filter(address -> !address.startsWith("chrome:"))
        .toList();
  }

  /** What the browser complained of since the last time, such as what a page's policy stopped. */
  List<String> complaints() {
    return driver.manage().logs().get(LogType.BROWSER).getAll().stream()
        .map(entry -> entry.getMessage())
        .toList();
  }

  /** A picture of the whole page, as PNG. */
  byte[] picture() {
    long height = number("return document.documentElement.scrollHeight");
    long width = number("return window.innerWidth");
    command(
        "Emulation.setDeviceMetricsOverride",
        Map.of("width", width, "height", height, "deviceScaleFactor", 1, "mobile", false));
    return driver.getScreenshotAs(OutputType.BYTES);
  }

  @Override
  public void close() {
    driver.quit();
  }

  private static String resource(String name) {
    try (InputStream bytes =
        Objects.requireNonNull(Browser.class.getResourceAsStream(name), name)) {
      return new String(bytes.readAllBytes(), StandardCharsets.UTF_8);
    } catch (IOException e) {
      throw new UncheckedIOException(e);
    }
  }
}
