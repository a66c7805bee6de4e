# Types a line into an interactive zsh, asks it to complete, and prints what the terminal shows.
# usage: zsh -f zsh-completes.zsh LINE
zmodload zsh/zpty
zpty shell zsh -f -i
zpty -w shell 'PS1="" ; fpath=(/usr/share/zsh/vendor-completions $fpath); autoload -Uz compinit; compinit -u -D; LISTMAX=1000'
zpty -w shell 'echo re''ady'
zpty -r -m shell seen '*ready*'
zpty -w -n shell "$1"$'\t\t'
sleep 2
while zpty -r -t shell part; do print -r -- "$part"; done
zpty -d shell
