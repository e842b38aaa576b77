"""The pure core of a colony: records, arithmetic, sentences, plans. No Qt, no SQL, no clock."""
