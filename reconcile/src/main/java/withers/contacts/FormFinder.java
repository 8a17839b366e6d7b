package withers.contacts;

import java.util.Collection;
import java.util.HashMap;
import java.util.Map;
import java.util.function.Function;
import withers.contact.Contact;
import withers.contact.ContactRef;
import withers.matching.form.FormedContact;
import withers.matching.form.NormalForms;

/** Finds what contacts are compared by. Safe for several threads. */
@FunctionalInterface
public interface FormFinder {

  /**
   * What the contacts behind these references say; those that were forgotten or never stored are
   * not among them.
   */
  Map<ContactRef, FormedContact> find(Collection<ContactRef> references);

  /**
   * Makes everything anew.
   *
   * @param vault finds contacts
   */
  static FormFinder anew(
      Function<Collection<ContactRef>, Map<ContactRef, Contact>> vault, NormalForms forms) {
    return references -> {
      Map<ContactRef, FormedContact> made = new HashMap<>();
      vault
          .apply(references)
          .forEach((reference, contact) -> made.put(reference, forms.formed(contact)));
      return made;
    };
  }
}
