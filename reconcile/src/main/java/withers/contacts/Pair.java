package withers.contacts;

import withers.contact.ContactRef;

/** Two contacts that are not equal, the lesser first: what is told of them is symmetric. */
record Pair(ContactRef one, ContactRef other) {

  static Pair of(ContactRef one, ContactRef other) {
    return one.compareTo(other) <= 0 ? new Pair(one, other) : new Pair(other, one);
  }
}
