package withers.report.browser;

import static org.assertj.core.api.Assertions.assertThat;
import static org.junit.jupiter.api.TestInstance.Lifecycle.PER_CLASS;

import java.io.IOException;
import java.nio.file.Files;
import java.nio.file.Path;
import java.util.ArrayList;
import java.util.List;
import org.junit.jupiter.api.AfterAll;
import org.junit.jupiter.api.BeforeAll;
import org.junit.jupiter.api.DisplayNameGeneration;
import org.junit.jupiter.api.DisplayNameGenerator;
import org.junit.jupiter.api.Tag;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.api.TestInstance;
import org.junit.jupiter.api.condition.EnabledIf;
import org.junit.jupiter.api.io.TempDir;
import org.openqa.selenium.Keys;
import org.openqa.selenium.WebElement;
import withers.report.browser.Browser.Screen;
import withers.report.cli.DemoPages;

/** What a browser makes of the demo's pages: Chromium, and axe-core 4.11.1 in it. */
@EnabledIf(
    value = "withers.report.browser.Browser#isHere",
    disabledReason = "no Chromium with its chromedriver; CI requires them")
@TestInstance(PER_CLASS)
@DisplayNameGeneration(DisplayNameGenerator.ReplaceUnderscores.class)
@Tag("browser")
class PagesInABrowserTest {
  private List<Path> pages;
  private Path list;
  private Browser browser;

  @BeforeAll
  void plays_the_demo(@TempDir Path folder, @TempDir Path profile) {
    pages = DemoPages.made(folder.resolve("demo"));
    list = pages.stream().filter(page -> page.toString().contains("pellerwick")).findAny().get();
    browser = Browser.start(profile);
  }

  @AfterAll
  void ends_the_browser() {
    if (browser != null) {
      browser.close();
    }
  }

  /**
   * WCAG 2.2 to level AA and best practices, as far as axe-core can tell. Every page on a phone in
   * light and at a desk in dark; the overview and one list in all four.
   */
  @Test
  void no_page_has_a_barrier_that_axe_knows_in_light_or_dark_on_a_phone_or_at_a_desk() {
    List<String> barriers = new ArrayList<>();
    for (Path page : pages) {
      for (Screen screen : screens(page)) {
        browser.use(screen);
        browser.open(page);
        browser.violations().forEach(one -> barriers.add(page + " at " + screen + ": " + one));
      }
    }
    assertThat(barriers).isEmpty();
  }

  private List<Screen> screens(Path page) {
    boolean isInAll = page.equals(list) || page.endsWith("overview.html");
    return isInAll ? Screen.ALL : List.of(Screen.ALL.get(0), Screen.ALL.get(3));
  }

  @Test
  void no_page_asks_for_anything_but_itself_and_none_is_stopped_by_its_own_policy() {
    browser.requested();
    browser.complaints();
    for (Path page : pages) {
      browser.open(page);
    }
    assertThat(browser.requested())
        .containsExactlyElementsOf(pages.stream().map(page -> page.toUri().toString()).toList());
    assertThat(browser.complaints()).isEmpty();
  }

  @Test
  void a_script_that_somebody_got_into_a_page_does_not_run(@TempDir Path aside) throws IOException {
    Path page = aside.resolve("list.html");
    String smuggled = "<script>document.title = 'taken over'</script></body>";
    Files.writeString(page, Files.readString(list).replace("</body>", smuggled));
    browser.complaints();

    browser.open(page);

    assertThat(browser.ask("return document.title")).asString().startsWith("Follow-ups for");
    assertThat(browser.complaints()).singleElement().asString().contains("Content Security Policy");
  }

  /** WCAG 2.2, 1.4.10: 320 CSS pixels. Tables may scroll by themselves. */
  @Test
  void no_page_scrolls_sideways_on_the_narrowest_screen() {
    browser.use(new Screen(320, 640, false));
    for (Path page : pages) {
      browser.open(page);
      assertThat(browser.number("return document.documentElement.scrollWidth"))
          .as(page.toString())
          .isLessThanOrEqualTo(320);
    }
  }

  @Test
  void on_paper_a_page_is_as_wide_as_the_sheet_and_leaves_out_what_can_only_be_clicked() {
    browser.use(Screen.ALL.get(1));
    browser.open(list);
    browser.print();

    assertThat(browser.seen(".sift, .skip, #sifted")).isEmpty();
    assertThat(browser.seen("article")).isNotEmpty();
    assertThat(browser.ask("return getComputedStyle(document.body).backgroundColor"))
        .isEqualTo("rgb(255, 255, 255)");
    assertThat(
            browser.ask("return getComputedStyle(document.querySelector('article')).breakInside"))
        .isEqualTo("avoid");
  }

  @Test
  void a_list_is_narrowed_by_when_what_and_new_and_says_how_much_is_left() {
    open();
    int all = shown();
    assertThat(told()).isEqualTo("Showing %d of %d.".formatted(all, all));

    choose("band", "this-week");
    int week = shown();
    assertThat(browser.seen("section.band > h2")).containsExactly("This week");
    choose("mark", "new");
    int fresh = shown();
    choose("kind", "unregistered");
    int unregistered = shown();

    assertThat(unregistered).isPositive().isLessThan(fresh);
    assertThat(fresh).isLessThan(week);
    assertThat(week).isLessThan(all);
    assertThat(browser.seen("article .mark")).containsOnly("New");
    assertThat(told()).isEqualTo("Showing %d of %d.".formatted(unregistered, all));
    assertThat(browser.violations()).isEmpty();

    browser.find(".sift button").click();

    await(() -> shown() == all);
    assertThat(told()).isEqualTo("Showing %d of %d.".formatted(all, all));
  }

  @Test
  void words_are_found_in_any_order_and_a_number_however_it_is_grouped() {
    open();
    String animal = browser.seen("article h4").get(3);
    String number = browser.seen("article .chip").get(3).replaceAll("\\D", "");
    String[] words = animal.split("[ ,()]+");
    WebElement text = browser.find("input[name=text]");

    text.sendKeys(words[1].toUpperCase(java.util.Locale.ROOT) + " " + words[0]);
    assertThat(browser.seen("article h4")).contains(animal);
    text.clear();
    text.sendKeys(
        number.substring(0, 5) + " " + number.substring(5, 10) + "-" + number.substring(10));
    assertThat(browser.seen("article h4")).contains(animal);
    assertThat(browser.seen("article .chip"))
        .allMatch(one -> one.replaceAll("\\D", "").equals(number));
    text.clear();
    text.sendKeys("no such word");
    assertThat(shown()).isZero();
    assertThat(browser.seen("section.band")).isEmpty();
    assertThat(told()).isEqualTo("Nothing here is like that. Choose less, or show all.");
  }

  @Test
  void a_list_is_sorted_by_animal_and_each_card_still_says_when_and_what_to_take_care_of() {
    open();
    List<String> urgent = browser.seen("article h4");

    choose("sort", "animal");

    List<String> byAnimal = browser.seen("#together h4");
    assertThat(byAnimal)
        .containsExactlyInAnyOrderElementsOf(urgent)
        .isSortedAccordingTo(java.text.Collator.getInstance(java.util.Locale.UK));
    assertThat(browser.seen("#together .whence > p:first-child"))
        .hasSameSizeAs(byAnimal)
        .allMatch(line -> line.matches("(Today|This week|This month|When possible) · .+"));
    assertThat(browser.seen("#together .whence .care")).hasSameSizeAs(byAnimal);
    assertThat(browser.violations()).isEmpty();

    choose("sort", "day");
    assertThat(
            (List<?>)
                browser.ask(
                    "return [...document.querySelectorAll('#together article')].map((a) => a.dataset.day)"))
        .map(String::valueOf)
        .isSortedAccordingTo(java.util.Comparator.reverseOrder());
    choose("sort", "");
    assertThat(browser.seen("article h4")).isEqualTo(urgent);
    assertThat(browser.seen("#together, .whence")).isEmpty();
  }

  @Test
  void everything_works_by_the_keyboard_and_a_link_to_what_is_hidden_shows_all() {
    open();
    int all = shown();
    browser.find("input[name=text]").sendKeys(Keys.TAB);
    WebElement focused = browser.focused();
    assertThat(focused.getDomAttribute("name")).isEqualTo("band");
    focused.sendKeys("This month");
    assertThat(browser.seen("section.band > h2")).containsExactly("This month");

    browser.find("a[href='#this-week']").sendKeys(Keys.ENTER);

    await(() -> shown() == all);
    assertThat(browser.ask("return location.hash")).isEqualTo("#this-week");
  }

  @Test
  void nothing_chosen_on_a_page_is_kept() {
    open();
    int all = shown();
    choose("mark", "open");

    open();

    assertThat(shown()).isEqualTo(all);
    assertThat(browser.find("select[name=mark]").getDomProperty("value")).isEmpty();
  }

  private void open() {
    browser.use(Screen.ALL.get(1));
    browser.open(list);
  }

  private int shown() {
    return browser.seen("[data-mark]").size();
  }

  private String told() {
    return browser.find("#sifted").getText();
  }

  private void choose(String name, String value) {
    browser.find("select[name=%s] option[value='%s']".formatted(name, value)).click();
  }

  private void await(java.util.function.BooleanSupplier until) {
    browser.await(until);
  }
}
