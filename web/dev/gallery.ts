// gallery.ts: every block in sample states, to be looked at while building. Not part of what is delivered.
import '../src/style/tokens.css';
import '../src/style/base.css';
import { mount } from 'svelte';
import Gallery from './Gallery.svelte';

const theme = new URLSearchParams(location.search).get('theme');
if (theme) document.documentElement.dataset['theme'] = theme;
const target = document.getElementById('page');
if (target) mount(Gallery, { target });
