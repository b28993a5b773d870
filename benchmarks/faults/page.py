"""Whether a page shows a name as text: python3 page.py PAGE NAME. Says what is wrong and ends with 1."""
import html.parser
import sys


class Page(html.parser.HTMLParser):
    """Gathers text, and whether names stand in elements that keep their direction to themselves."""

    def __init__(self):
        super().__init__(convert_charrefs=True)
        self.text, self.tags, self.isolated = [], set(), []
        self.depth = 0

    def handle_starttag(self, tag, attrs):
        self.tags.add(tag)
        if tag == 'bdi':
            self.depth += 1

    def handle_endtag(self, tag):
        if tag == 'bdi':
            self.depth -= 1

    def handle_data(self, data):
        self.text.append(data)
        if self.depth:
            self.isolated.append(data)


page, name = Page(), sys.argv[2]
page.feed(open(sys.argv[1], encoding='utf-8').read())
problems = []
if name not in ''.join(page.text):
    problems.append('the name is not in the text')
if 'b' in page.tags and name.startswith('<b>'):
    problems.append('the name became an element')
for word in name.split():
    # what is written from right to left; the page sets a run of such words apart
    if any('\u0590' <= c <= '\u08ff' for c in word) and not any(word in text for text in page.isolated):
        problems.append(f'{word} is in no bdi')
print('; '.join(problems))
sys.exit(1 if problems else 0)
