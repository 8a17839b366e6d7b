package withers.report.privacy;

import static org.assertj.core.api.Assertions.assertThat;

import java.util.List;
import org.junit.jupiter.api.DisplayNameGeneration;
import org.junit.jupiter.api.DisplayNameGenerator;
import org.junit.jupiter.api.Test;
import withers.contact.Contact;
import withers.contact.ContactRef;
import withers.report.Coast;

@DisplayNameGeneration(DisplayNameGenerator.ReplaceUnderscores.class)
class RequestTest {
  private static final Contact MARA = Coast.contact("Mara Linden", "+1 212 555 0151");

  @Test
  void a_namesake_and_who_shares_a_phone_may_be_meant_and_are_not_told_of_unasked() {
    ContactRef mara = new ContactRef(1, 0, 1);
    ContactRef namesake = new ContactRef(1, 0, 2);
    ContactRef household = new ContactRef(1, 0, 3);
    Request found =
        new Request(
            MARA,
            List.of(
                new Match(mara, MARA, true, "the same person"),
                new Match(
                    namesake,
                    Coast.contact("Mara Linden", "+1 212 555 0188"),
                    false,
                    "the same name"),
                new Match(
                    household,
                    Coast.contact("Ivo Reed", "+1 212 555 0151"),
                    false,
                    "the same phone")),
            List.of());

    assertThat(found.references()).containsExactlyInAnyOrder(mara, namesake, household);
    assertThat(found.likely().references()).containsExactly(mara);
  }
}
