# Deutsch. Ein Schlüssel für jeden Satz einer Seite; { $names } bleibt offen.

range = { $least } bis { $most }
