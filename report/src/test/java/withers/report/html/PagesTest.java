package withers.report.html;

import static org.assertj.core.api.Assertions.assertThat;
import static withers.report.Coast.CLINIC;
import static withers.report.Coast.contact;

import java.nio.charset.StandardCharsets;
import java.security.MessageDigest;
import java.util.ArrayList;
import java.util.Base64;
import java.util.List;
import java.util.Locale;
import java.util.Optional;
import java.util.regex.Matcher;
import java.util.regex.Pattern;
import org.junit.jupiter.api.DisplayNameGeneration;
import org.junit.jupiter.api.DisplayNameGenerator;
import org.junit.jupiter.api.Test;
import withers.finding.FindingKind;
import withers.report.Coast;
import withers.report.FindingStory;
import withers.report.Samples;
import withers.report.list.FollowUpList;
import withers.report.list.FollowUpLists;
import withers.report.text.Texts;

@DisplayNameGeneration(DisplayNameGenerator.ReplaceUnderscores.class)
class PagesTest {
  private final Texts texts = Texts.in(Locale.UK);
  private final Pages pages = new Pages(texts);
  private final Samples samples = new Samples();

  /** Against the Nu HTML checker (nu.validator 20.7.2), warnings and style sheet included. */
  @Test
  void every_page_is_valid_HTML() throws Exception {
    for (String page : everyPage()) {
      assertThat(HtmlChecker.complaints(page))
          .isEqualTo("Document checking completed. No errors found.\n");
    }
  }

  @Test
  void no_page_asks_anything_of_a_server() {
    for (String page : everyPage()) {
      assertThat(page)
          .contains("content=\"default-src 'none'; style-src 'unsafe-inline'; base-uri 'none'")
          .doesNotContain("http:", "https:", "src=", "<img", "<link", "url(", "@import");
      assertThat(page).doesNotContainPattern("\\son[a-z]+\\s*=");
    }
  }

  /** The digest is taken here from the page itself, as CSP 3 says: of the element's text. */
  @Test
  void the_only_script_is_the_one_whose_digest_the_page_names() throws Exception {
    String page = pages.list(samples.lists(texts).get(1));
    String script = between(page, "<script>", "</script>").substring("<script>".length());
    byte[] digest =
        MessageDigest.getInstance("SHA-256").digest(script.getBytes(StandardCharsets.UTF_8));

    assertThat(page.split("<script")).hasSize(2);
    assertThat(page)
        .contains(
            "; script-src &#39;sha256-%s&#39;\">"
                .formatted(Base64.getEncoder().encodeToString(digest)));
    assertThat(script).doesNotContain("fetch", "XMLHttp", "Storage", "cookie", "innerHTML", "eval");
  }

  @Test
  void a_mail_and_the_overview_run_nothing_and_have_nothing_to_filter_by() {
    for (String page :
        List.of(
            pages.mailed(samples.lists(texts).get(1)),
            pages.overview(samples.overview(), Coast.DIRECTORY))) {
      assertThat(page)
          .contains("base-uri 'none'; form-action 'none'\">")
          .doesNotContain("<script", "<form", "<select", "<input");
    }
  }

  @Test
  void whatever_a_record_says_is_text_and_no_markup() {
    Coast coast = new Coast();
    String nasty = "<script>alert(1)</script>\" onclick=\"x' &amp;";
    FindingStory story =
        FindingStory.of(FindingKind.UNREGISTERED, CLINIC, 1)
            .named(nasty)
            .record(nasty)
            .with(coast.person(CLINIC, contact(nasty, nasty + "555")));

    String page =
        pages.list(FollowUpLists.of(Coast.run(story), Coast.DIRECTORY, coast.vault, texts).get(0));

    assertThat(page)
        .doesNotContain("<script>alert", "&amp; ", "onclick=\"x' &amp;<")
        .contains("&lt;script&gt;alert(1)&lt;/script&gt;\" onclick=\"x' &amp;amp;, dog")
        .contains("href=\"tel:1555\"");
  }

  @Test
  void an_empty_list_says_that_nothing_is_to_be_done() {
    FollowUpList empty =
        new FollowUpList(
            Coast.DIRECTORY.find(CLINIC).orElseThrow(),
            "run",
            Coast.TODAY,
            List.of(),
            List.of(),
            Optional.empty(),
            3,
            2,
            0,
            Optional.empty(),
            List.of(),
            List.of());

    assertThat(pages.list(empty))
        .contains("Nothing to follow up. 0 new, 0 still open, 3 settled since last time.")
        .contains("2 follow-ups are not listed, because a person has settled them.")
        .contains("There is nothing to do. Thank you.");
  }

  /** WCAG 2.2, 1.4.3: text has a contrast of 4.5 to its ground, in light and in dark. */
  @Test
  void text_stands_out_from_its_ground_in_light_and_in_dark() {
    String page = everyPage().get(0);
    String light = between(page, ":root {", "}");
    String dark = between(page, "prefers-color-scheme: dark) {", "}");
    for (String scheme : List.of(light, dark)) {
      for (String ground : List.of("paper", "sheet", "wash", "urgent-wash")) {
        for (String ink : List.of("ink", "quiet", "accent", "urgent")) {
          assertThat(Contrast.between(colour(scheme, ink), colour(scheme, ground)))
              .as(ink + " on " + ground)
              .isGreaterThanOrEqualTo(4.5);
        }
      }
    }
  }

  private List<String> everyPage() {
    List<String> all = new ArrayList<>();
    samples.lists(texts).forEach(list -> all.add(pages.list(list)));
    samples.lists(texts).forEach(list -> all.add(pages.mailed(list)));
    all.add(pages.overview(samples.overview(), Coast.DIRECTORY));
    return all;
  }

  private static String colour(String scheme, String name) {
    Matcher colour = Pattern.compile("--" + name + ": (#[0-9a-f]{6})").matcher(scheme);
    assertThat(colour.find()).as(name).isTrue();
    return colour.group(1);
  }

  private static String between(String text, String start, String end) {
    int from = text.indexOf(start);
    return text.substring(from, text.indexOf(end, from));
  }
}
