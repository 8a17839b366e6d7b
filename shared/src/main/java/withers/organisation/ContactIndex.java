package withers.organisation;

import java.util.Collection;
import java.util.HashMap;
import java.util.LinkedHashSet;
import java.util.List;
import java.util.Locale;
import java.util.Map;
import java.util.Set;
import java.util.function.UnaryOperator;
import withers.contact.Contact;

/**
 * Finds organisations and their carers by phone or e-mail address. A phone may belong to several.
 * E-mail addresses are compared without regard to case. Immutable; safe for several threads when
 * the phone key is.
 */
public final class ContactIndex {
  private final UnaryOperator<String> phoneKey;
  private final Map<String, Set<Organisation>> organisations = new HashMap<>();
  private final Map<String, Set<Carer>> carers = new HashMap<>();

  ContactIndex(Collection<Organisation> all, UnaryOperator<String> phoneKey) {
    this.phoneKey = phoneKey;
    for (Organisation organisation : all) {
      add(organisations, organisation.contact(), organisation);
      for (Contact carer : organisation.carers()) {
        add(carers, carer, new Carer(organisation.id(), carer));
      }
    }
  }

  private <T> void add(Map<String, Set<T>> index, Contact contact, T value) {
    contact.phones().forEach(phone -> put(index, phone(phone), value));
    contact.emails().forEach(email -> put(index, email(email), value));
  }

  private static <T> void put(Map<String, Set<T>> index, String key, T value) {
    if (!key.isEmpty()) {
      index.computeIfAbsent(key, k -> new LinkedHashSet<>()).add(value);
    }
  }

  /** Organisations with this phone, in the order of their ids. */
  public List<Organisation> organisationsByPhone(String phone) {
    return found(organisations, phone(phone));
  }

  /** Organisations with this e-mail address, in the order of their ids. */
  public List<Organisation> organisationsByEmail(String email) {
    return found(organisations, email(email));
  }

  /** Carers with this phone, in the order of their organisations' ids. */
  public List<Carer> carersByPhone(String phone) {
    return found(carers, phone(phone));
  }

  /** Carers with this e-mail address, in the order of their organisations' ids. */
  public List<Carer> carersByEmail(String email) {
    return found(carers, email(email));
  }

  private static <T> List<T> found(Map<String, Set<T>> index, String key) {
    return List.copyOf(index.getOrDefault(key, Set.of()));
  }

  private String phone(String phone) {
    String key = phoneKey.apply(phone);
    return key.isEmpty() ? "" : "phone " + key;
  }

  private static String email(String email) {
    String key = email.strip().toLowerCase(Locale.ROOT);
    return key.isEmpty() ? "" : "email " + key;
  }
}
