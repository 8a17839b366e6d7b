package withers.report.html;

import static org.assertj.core.api.Assertions.assertThat;

import java.io.ByteArrayInputStream;
import java.nio.charset.StandardCharsets;
import java.util.Locale;
import nu.validator.client.EmbeddedValidator;
import org.junit.jupiter.api.DisplayNameGeneration;
import org.junit.jupiter.api.DisplayNameGenerator;
import org.junit.jupiter.api.Test;
import withers.report.Samples;
import withers.report.list.FollowUpList;
import withers.report.text.Texts;

@DisplayNameGeneration(DisplayNameGenerator.ReplaceUnderscores.class)
class PagesTest {
  private final Texts texts = Texts.in(Locale.UK);
  private final Pages pages = new Pages(texts);

  /** Against the W3C's checker (Nu, nu.validator 20.7.2), warnings included. */
  @Test
  void lists_are_valid_HTML() throws Exception {
    for (FollowUpList list : new Samples().lists(texts)) {
      assertThat(complaints(pages.list(list))).isEmpty();
    }
  }

  private static String complaints(String page) throws Exception {
    EmbeddedValidator validator = new EmbeddedValidator();
    validator.setOutputFormat(EmbeddedValidator.OutputFormat.TEXT);
    return validator.validate(new ByteArrayInputStream(page.getBytes(StandardCharsets.UTF_8)));
  }
}
